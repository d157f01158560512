"""Make the bad files of README.md in a folder."""

from __future__ import annotations

import hashlib
import struct
import zlib
from pathlib import Path

from PIL import Image

from tests.intake.pictures import card, save

HUGE_SIDE = 30_000


def make_all(folder: Path) -> None:
    """Write every bad file and one good one."""
    save(card(), folder / "good.png")
    (folder / "empty.png").write_bytes(b"")
    whole = save(card(1200, 900).convert("RGB"), folder / "truncated.jpg", quality=95).read_bytes()
    (folder / "truncated.jpg").write_bytes(whole[: len(whole) // 2])
    whole = save(card(1200, 900), folder / "truncated.png").read_bytes()
    (folder / "truncated.png").write_bytes(whole[: len(whole) // 2])
    (folder / "mislabelled.png").write_text("Dear Sir, the advert you asked for is not in our files.\n")
    (folder / "locked.pdf").write_bytes(locked_pdf())
    (folder / "broken.pdf").write_bytes(b"%PDF-1.4\n" + noise(7, 4000))
    (folder / "huge.png").write_bytes(huge_png())
    save(Image.new("L", (600, 400), 0), folder / "black.png")
    save(Image.new("1", (600, 400), 1), folder / "white.tif")
    zero = bytearray(save(card(words="ZERO"), folder / "zero-dpi.jpg", dpi=(300, 300)).read_bytes())
    zero[14:18] = b"\0\0\0\0"  # the densities of the JFIF header
    (folder / "zero-dpi.jpg").write_bytes(bytes(zero))
    (folder / "sound.bin").write_bytes(noise(8, 5000))
    (folder / "phone.heic").write_bytes(b"\0\0\0\x18ftypheic\0\0\0\0mif1heic" + bytes(400))


def noise(seed: int, size: int) -> bytes:
    """Return the same meaningless bytes every time."""
    return hashlib.shake_128(bytes([seed])).digest(size)


def huge_png(side: int = HUGE_SIDE) -> bytes:
    """Return a two-tone PNG of side x side pixels, packed to little, without ever holding it."""
    packer = zlib.compressobj(9)
    row = b"\0" + bytes((side + 7) // 8)
    data = b"".join(packer.compress(row) for _ in range(side)) + packer.flush()
    header = struct.pack(">IIBBBBB", side, side, 1, 0, 0, 0, 0)
    chunks = ((b"IHDR", header), (b"IDAT", data), (b"IEND", b""))
    return b"\x89PNG\r\n\x1a\n" + b"".join(
        struct.pack(">I", len(body)) + name + body + struct.pack(">I", zlib.crc32(name + body)) for name, body in chunks
    )


def locked_pdf() -> bytes:
    """Return a PDF under the standard security handler (ISO 32000-1, 7.6.3) whose password nobody knows."""
    owner, user = (noise(seed, 32).hex() for seed in (1, 2))
    objects = [
        "<< /Type /Catalog /Pages 2 0 R >>",
        "<< /Type /Pages /Kids [3 0 R] /Count 1 >>",
        "<< /Type /Page /Parent 2 0 R /MediaBox [0 0 300 200] >>",
        f"<< /Filter /Standard /V 1 /R 2 /O <{owner}> /U <{user}> /P -4 >>",
    ]
    out, places = "%PDF-1.4\n", []
    for number, body in enumerate(objects, 1):
        places.append(len(out))
        out += f"{number} 0 obj\n{body}\nendobj\n"
    table = "".join(f"{place:010d} 00000 n \n" for place in places)
    trailer = f"<< /Size 5 /Root 1 0 R /Encrypt 4 0 R /ID [<{'00' * 16}> <{'00' * 16}>] >>"
    return f"{out}xref\n0 5\n0000000000 65535 f \n{table}trailer\n{trailer}\nstartxref\n{len(out)}\n%%EOF\n".encode()
