"""The forms of a shop's address, and the town that closes it: street, highway, rural route, box, with or without comma.

"19-23 North Canal St., Osterby", "12, Minster Row, OSTERBY", "Highway 9 North, Osterby Open Sundays", "R. F. D. 2,
Osterby", "Penhallow Stores in Osterby", "Osterby" over the line with the telephone. Common practice, no source.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from typing import Final

from adminer.dating.calendar_words import MONTHS
from adminer.layout.states import STATES
from adminer.parsing.house.house_forms import is_trade_line
from adminer.parsing.text.goods import find_nouns, praise, stops
from adminer.parsing.text.lexicon import word_list
from adminer.parsing.text.slips import is_word, slips_of

STREET: Final = (
    r"(?:Street|St\.?|Ave\.?|Avenue|Road|Rd\.?|Blvd\.?|Boulevard|B[lI1]dg\.?|Building|Place|Square|Sq\.?|Block|Plaza|"
    r"Corners?|Theat(?:re|er)|Arcade|Row|Lane|Terrace|Crescent|Parade|Quay|Wharf|Drive|Highway|Pike|Turnpike|Parkway|"
    r"STREET|ST\.?|AVE\.?|AVENUE|ROAD|RD\.?|BLVD\.?|LANE|HIGHWAY|Broadway|Shopping (?:Center|Centre|Plaza)|Mall)"
    r"(?![a-z])"
)
# with the counties that adverts shorten, and letters whose points were lost
LANDS: Final = (
    rf"(?:{STATES}|[NS] [CDHJY]|R I|L\.? ?I|Yorks|Lancs|Lincs|Notts|Staffs|Warwicks|Wilts|Hants|Berks|Bucks|Herts|"
    r"Cambs|Northants|Leics|Glos|Oxon|Salop|Worcs|Vict?|Tas|N\.? ?Z)"
)
_HOURS: Final = (
    r"(?:Open|Closed|Phones?|Ph\.|Telephone|Tel\.|Dial|Call|Prices|Hours|Daily|Free|Near|Next|Opposite|Across|Store|"
    r"(?:Mon|Tue|Wed|Thu|Fri|Sat|Sun)[a-z]*)(?![a-z])"
)
_MONTH: Final = rf"(?i:{'|'.join(sorted(MONTHS))})"
# the towns of Britain, and those called after them, are told from one another so: "Osterby-on-Wenn"
SMALL_WORDS: Final = r"(?i:on|upon|under|over|in|by|near|next|with|super|le|la|de|the|on-the|in-the|by-the|de-la|sub)"
_WORD: Final = rf"(?!{_HOURS})[A-Z][A-Za-z'’]{{2,}}(?:-{SMALL_WORDS}-[A-Z][A-Za-z]+)?"
_NAME: Final = rf"(?P<city>(?:(?:St|Ft|Mt|Pt)\. ?)?{_WORD}(?: {_WORD}){{0,2}})"
_ENDS: Final = (
    rf"(?:\n|$|[·•|;:*–—(]|- |[,.]? ?{_HOURS}|, ?{LANDS}(?![A-Za-z])|[.,]? (?:and|&) (?:at )?[A-Z]|"
    r"\.? \d{1,2}(?![\w-])|[.,]+(?:\n|$))"
)
_END: Final = rf"(?= ?{_ENDS})"
_COMPASS: Final = r"(?:[NSEW]\.?|North|South|East|West)"
_NUMBER: Final = r"(?<![\w$£/.,])\d{1,5}(?: ?[-–&] ?\d{1,5})?(?:½|[A-D])?,?"
NUMBERED: Final = rf"{_NUMBER} (?:{_COMPASS} )?(?:[A-Z][\w.'’]*|\d+(?:st|nd|rd|th)) (?:[A-Z][\w.'’]* ){{0,2}}?{STREET}"
ROUTED: Final = (
    r"\b(?:(?:U\. ?S\.|State|County) )?(?:Highway|Hwy\.?|Route|Rte?\.|R\. ?F\. ?D\.?|R\. ?D\.|Rural Route) ?"
    rf"(?:No\. ?)?\d{{1,3}}(?![\d/])(?: {_COMPASS}(?![a-z]))?"
)
BOXED: Final = r"\b(?:P\. ?O\. )?(?:Box|Drawer) ?(?:\d{1,4}|[A-Z])(?: ?-?[A-Z])?(?!\w)"
_REPLY: Final = re.compile(BOXED)  # "Box 7, Leader.": to the paper
# without a mark before the town only words that are nothing but streets: "Place", "Square", "Lane" are goods too
_STREETS_ONLY: Final = (
    r"(?<=Street)|(?<=Avenue)|(?<=Road)|(?<=Highway)|(?<=\b(?:St|Rd)\.)|(?<=\bAve\.)|(?<=\bBlvd\.)|"
    r"(?<=\b(?:ST|RD))|(?<=\bAVE)"
)
_CLOSED: Final = re.compile(
    rf"(?:(?:{NUMBERED}|{ROUTED})(?: ?[,.·•|;–—-]+ ?|\n)|(?:{NUMBERED}(?:{_STREETS_ONLY})|{ROUTED}) |{BOXED} ?, ?)"
    rf"{_NAME}{_END}"
)
STATE_LINE: Final = re.compile(rf"^{_NAME}(?: \d{{1,2}})?[.,] ?(?:{LANDS}|{LANDS.upper()})\.?$", re.MULTILINE)
_GLUED_STATE: Final = re.compile(rf"(?:{BOXED}|{NUMBERED}|\bDept\. ?[\w-]+)[.,;]? ?{_NAME}[.,] ?{LANDS}(?![A-Za-z])")
LANDMARK: Final = (
    r"(?i:opp(?:osite|\.)|next (?:door )?to|near|across from|facing|over|at) (?:the )?(?:[A-Z]\w+ )?(?i:post office|"
    r"court ?house|city hall|hall|bank|depot|hotel|library|station|theat(?:re|er)|school|square|armory|church|bridge|"
    r"creamery|elevator|mill|market|town hall|park)"
)
_WORDINGS: Final = (
    # corners and landmarks: "Cor. Main and Fourth, ...", "State & Broad Sts., ...", "Opp. Post Office, ..."
    re.compile(
        r"(?:\b(?i:cor\.?|corner(?: of)?) [A-Z]\w+\.? (?:(?i:and)|&) [A-Z0-9]\w+\.?(?: (?:Sts?|Streets?|Aves?)\.?)?|"
        rf"[A-Z]\w+ (?:and|&) [A-Z0-9]\w+ (?:Sts|Streets|Aves|Avenues)\.?|"
        rf"\b{LANDMARK})(?: ?[,·•|–—-] ?|\.{{1,2}} | in ){_NAME}{_END}"
    ),
    re.compile(rf"[,·•|–—-] ?{_NAME}[.,]? ?(?:[·•|–—-] ?)?(?=(?:Tele)?(?:[Pp]hones?|Tel\.|Ph\.) ?\d)"),
    re.compile(rf"\b(?:\d|[Tt]wo|[Tt]hree|[Ff]our|[Bb]oth|[Aa]ll) {_NAME} (?i:stores|branches|shops|markets)\b"),
    re.compile(rf"^[A-Z]\w+ (?:and|&|at|AND|AT) [A-Z]\w+, ?{_NAME}{_END}", re.MULTILINE),
    # the street's kind left out or no comma before the town, which capitals may set off: "401 E. Thorne, Osterby - ..."
    re.compile(rf"^{_NUMBER} (?:{_COMPASS} )?[A-Z][a-z]+, {_NAME}{_END}", re.MULTILINE),
    re.compile(rf"^(?:[A-Z][a-z]+ ){{1,2}}(?:Street|Avenue|Road|St\.|Ave\.|Rd\.) {_NAME}\.?$", re.MULTILINE),
    re.compile(rf"^(?=.*(?:{STREET}|{LANDMARK})).*[a-z] (?P<city>[A-Z]{{4,}}(?: [A-Z]{{4,}})?)\.?$", re.MULTILINE),
    # a sentence that tells the way to the shop: "1420 Route 9 at the Mill Bridge. OSTERBY FALLS Ask for our plan"
    re.compile(
        rf"^(?:{NUMBERED}|{_NUMBER} {ROUTED}|{ROUTED}) (?:at|near|opposite|off|by) (?:the )?[A-Z]\w+(?: [A-Z]\w+)?"
        r"[.,;] ?(?P<city>[A-Z]{4,}(?: [A-Z]{4,})?)(?= [A-Z][a-z]|[.,]?$)",
        re.MULTILINE,
    ),
    re.compile(rf"\b(?:[Mm]iles?|[Mm]i\.|{ROUTED}) (?i:north|south|east|west) of {_NAME}(?= on | ?{_ENDS})"),
    re.compile(rf"^{_NAME}, {_MONTH}[.,]? ?(?:\d{{1,2}}[.,]? ?)?1[89]\d\d\.?$", re.MULTILINE),
    re.compile(rf"\b(?i:free delivery (?:anywhere )?in|deliver(?:y|ed) free in|on the square in) {_NAME}{_END}"),
    re.compile(rf"\b(?i:downtown) (?P<city>{_WORD}(?: {_WORD})?){_END}"),  # three words are branches
    re.compile(rf"\b(?i:serving) {_NAME}(?= (?:since|for over|and vicinity)\b)"),
    re.compile(rf"\b(?i:prices (?:good|effective) (?:only )?in) {_NAME}(?= only| stores?| ?{_ENDS})"),
    re.compile(rf"\b(?:[Oo]ur|OUR) {_NAME}(?= (?i:store|branch)\b)"),
    re.compile(rf"^(?:In )?{_NAME}(?: (?:Store|Branch))?(?: ?[:–—] ?| - )(?={NUMBERED}|{ROUTED})", re.MULTILINE),
    re.compile(rf"[.,] ?{_NAME}[.,] ?{LANDS}\.?$", re.MULTILINE),
    # an abbreviation after the town is its state's, though misread
    re.compile(rf"(?:\bDept\.?(?: ?[\w-]+)?|{STREET}), ?{_NAME}[.,] ?[A-Z][a-z]{{1,4}}\.?$", re.MULTILINE),
    re.compile(rf"{_NAME}, [A-Z]{{2}}\.? \d{{5}}(?!\d)"),  # the state's two letters are those of the ZIP code
)
_OVER_PHONE: Final = re.compile(
    r"^(?P<city>[A-Z][a-z]{3,}(?: [A-Z][a-z]{3,})?|[A-Z]{4,}(?: [A-Z]{4,})?)\n(?:Tele)?[Pp]hone\b.{1,24}$", re.MULTILINE
)
# about the shop's own name: "Penhallow Stores in Osterby", "also Penhallow's Osterby", "Farm Supply of Osterby"
_NAMED_IN: Final = re.compile(rf"(?: [A-Z][A-Za-z]+)? (?:in|of|at) {_NAME}{_END}")
_ALSO: Final = re.compile(r"\b(?:also|at) (?:at |in )?\Z")
_NAMED: Final = re.compile(rf",? {_NAME}{_END}")
_OF_TOWN: Final = re.compile(r" of (?=[A-Z])")
_REACH: Final = len("also at ")
_SHORTEST: Final = 4  # characters of a shop's name; a shorter one stands within other words too
_STREET_END: Final = re.compile(STREET, re.IGNORECASE)
# what towns are called after, where a reader's slip shows
_GENERICS: Final = word_list("place_generics")
_TALK: Final = frozenset().union(*map(word_list, ("function", "prose", "slogan", "enquiry", "particulars")))
_SHORTENED: Final = {
    "Phila": "Philadelphia",
    "Balto": "Baltimore",
    "Cinti": "Cincinnati",
    "Cin'ti": "Cincinnati",
    "Bklyn": "Brooklyn",
    "Indpls": "Indianapolis",
    "Mpls": "Minneapolis",
    "Pittsbg": "Pittsburgh",
    "Frisco": "San Francisco",
    "Sacto": "Sacramento",
}


def towns_of_addresses(text: str, house: str = "") -> Iterator[str]:
    """Yield what may be the town of an advert's addresses, the surest wording first; `house` is the shop's name."""
    for pattern in (STATE_LINE, _GLUED_STATE, _CLOSED):
        for m in pattern.finditer(text):
            if not (_REPLY.match(m[0]) and m["city"].lower() in word_list("papers")):
                yield m["city"]
    yield from _towns_of_house(text, house) if len(house) >= _SHORTEST else ()
    for pattern in _WORDINGS:
        for m in pattern.finditer(text):
            if not is_talk(m["city"]) and m["city"].lower() not in house.lower():
                yield m["city"]
    for m in _OVER_PHONE.finditer(text) if house else ():
        if m["city"].lower() not in house.lower() and not all(is_word(w) for w in m["city"].lower().split()):
            yield m["city"]


def is_talk(name: str) -> bool:
    """Say whether what stands where a town may is goods, praise or everyday talk: "our Greater store"."""
    last = name.lower().split()[-1]
    if last in _GENERICS:
        return False
    return (
        is_street_or_trade(name)
        or last in _TALK
        or last in stops()
        or last in praise()
        or is_word(last)
        or bool(find_nouns(name))
    )


def is_street_or_trade(name: str) -> bool:
    """Say whether a name is a street's or a trade's and so no town's: "Granby Row", "Ironmongers"."""
    last = name.rsplit(maxsplit=1)[-1]
    if last.lower() in _GENERICS:
        return False
    return bool(_STREET_END.fullmatch(last)) or "street" in slips_of(last.lower()) or is_trade_line(name)


def _towns_of_house(text: str, house: str) -> Iterator[str]:
    """Yield the towns that a text tells with the shop's own name."""
    *front, own = _OF_TOWN.split(house)
    if front and re.search(rf" of {re.escape(own)}(?![a-z])", text):
        yield own
    # sought by itself: a pattern of the name and all that may stand about it takes longer to compile than to apply
    named = [m.span() for m in re.finditer(rf"{re.escape(house)}(?:['’]s)?", text, re.IGNORECASE)]
    for _, end in named:
        if m := _NAMED_IN.match(text, end):
            yield m["city"]
    for start, end in named:
        if _ALSO.search(text, max(0, start - _REACH), start) and (m := _NAMED.match(text, end)):
            yield m["city"]


def in_full(town: str) -> str:
    """Return a town without an old abbreviation or one slip in a word like "Junction" that many towns end with."""
    town = _SHORTENED.get(town.rstrip("."), town)
    *first, last = town.split(" ")
    word = last.lower()
    if not first or word in _GENERICS:
        return town
    near = {other for other in slips_of(word, capitals=last.isupper()) if other in _GENERICS}
    if len(near) != 1:
        return town
    right = near.pop()
    return " ".join([*first, right.upper() if last.isupper() else right.capitalize()])
