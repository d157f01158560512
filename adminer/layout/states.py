"""The states and lands of an address as adverts of the century print them; common practice, no source."""

from __future__ import annotations

from typing import Final

STATES: Final = (
    r"(?:Alabama|Ala|Alaska|Arizona|Ariz|Arkansas|Ark|California|Calif|Cal|Colorado|Colo|Connecticut|Conn|Delaware|Del|"
    r"Florida|Fla|Georgia|Ga|Hawaii|Idaho|Ida|Illinois|Ill|Indiana|Ind|Iowa|Ia|Kansas|Kans|Kan|Kentucky|Ky|"
    r"Louisiana|La|Maine|Me|Maryland|Md|Massachusetts|Mass|Michigan|Mich|Minnesota|Minn|Mississippi|Miss|Missouri|Mo|"
    r"Montana|Mont|Nebraska|Nebr|Neb|Nevada|Nev|New Hampshire|N\. ?H|New Jersey|N\. ?J|New Mexico|N\. ?M(?:ex)?|"
    r"New York|N\. ?Y|North Carolina|N\. ?C(?:ar)?|North Dakota|N\. ?D(?:ak)?|Ohio|O|Oklahoma|Okla|Oregon|Oreg|Ore|"
    r"Pennsylvania|Penna|Penn|Pa|Rhode Island|R\. ?I|South Carolina|S\. ?C(?:ar)?|South Dakota|S\. ?D(?:ak)?|"
    r"Tennessee|Tenn|Texas|Tex|Utah|Vermont|Vt|Virginia|Va|Washington|Wash|Wn|West Virginia|W\. ?Va|Wisconsin|Wisc|"
    r"Wis|Wyoming|Wyo|D\. ?C|England|Eng|Scotland|Ireland|Wales|Canada|Ontario|Ont|Quebec|Que|P\. ?Q|Manitoba|Man|"
    r"Alberta|Alta|Saskatchewan|Sask|B\. ?C|N\. ?B|N\. ?S|Australia|N\. ?S\. ?W|Egypt)"
)
