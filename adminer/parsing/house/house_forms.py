"""What a name of a house looks like: a firm's word, a shop's, initials, forename and surname, two partners.

Each form has a weight: how much it alone says that a line names who advertises. All weights are judgement, no source.
"""

from __future__ import annotations

import re
from functools import lru_cache
from string import ascii_lowercase
from typing import Final

from adminer.names.pieces import load_vocabulary
from adminer.parsing.text.goods import find_nouns, has_goods, praise, stops
from adminer.parsing.text.lexicon import word_list
from adminer.parsing.text.slips import is_word

FIRM: Final = re.compile(
    r"\b(?:C[Oo]|C(?i:ompany)|B(?i:ros)|B(?i:rothers)|(?:&|A(?i:nd)|and) S(?i:ons?)|S(?i:ons?)|L(?i:td)|L(?i:imited)|"
    r"I(?i:nc)|M(?i:fg)|M(?i:anufacturing)|C(?i:orp)|C(?i:orporation)|C(?i:ie)|C(?i:oy)|M(?i:erc)|F(?i:r[eè]res)|"
    r"F(?i:ils)|R[Yy](?=\.|$)|R\. ?R)\b\.?"
)
_SHOPS: Final = (
    r"Stores?|(?:Super ?)?Markets?|Mercantile|Dry Goods|Shops?|Shoppe|Grocery|Groceries|Grocers?|Hardware|Furniture|"
    r"Jewell?ers?|Pharmacy|Drug Store|Department Store|Emporium|Bazaar|Variety Store|Theat(?:re|er)|"
    r"(?:Service |Filling )?Stations?|Discount|Mart|"
    r"(?:Discount|Shopping|Food|Trading|Tire|Auto|Garden|Paint|Appliance|Furniture|Carpet|Music|TV|Fabric|Shoe|Lumber|"
    r"Trailer|Camera|Hobby) (?:Center|Centre)|"
    r"Nurser(?:y|ies)|Dairy|Dairies|Studios?|Tea ?Rooms?|Greenhouses?|Florists?|"
    r"(?:Fuel|Coal|Lumber|Wood|Poultry|Stock) Yards?|(?:Shoe|Doll) Hospital|Works|"
    r"Mills?|Bakery|Trading Post|House|Outfitters?|Tailors?|Drapers?|Importers?|Agency|Railways?|Railroad|"
    r"(?:Book|Food|Super|Smoke|Steak|Play|Drug|Road)(?:shop|store|mart|house|market)s?"
)
HOUSE: Final = re.compile(rf"{FIRM.pattern}|(?i:\b(?:{_SHOPS})\b\.?)")
# what a shop or maker calls itself by, though the word says less than "Store"
TRADE: Final = re.compile(
    # before the single words that begin so; "Dinner Service" is a set
    r"\b(?:(?:Tire|Auto|Car|Radio|TV|Television|Repair|Cleaning|Laundry|Taxi|Cab|Funeral|Appliance|Motor|Electric|Typewriter|"
    r"Watch|Oil|Gas|Battery|Brake|Tree|Shoe|Feed|Ice|Milk|Heating|Plumbing|Trucking|Delivery|Food) Services?|"
    r"Drugs?|Caf[eé]|Restaurant|Lunch|Grill|Laundry|Cleaners|Electric|Supply|Depot|Stand|Motors|Garage|"
    r"Auto(?: Supply| Parts)?|Radio|Appliances?|Clothiers?|Millinery|Feed|Hatchery|Creamery|Exchange|Syndicate|"
    r"Co-?op(?:erative)?|Association|Hall|Foodliner|Fairs?|Distributors?|Industries|Enterprises|Associates|Guild|Crafts|"
    r"Potter(?:y|ies|s)|Looms|Weavers|Products|Laborator(?:y|ies)|Press|Publishers|Institute|Opticians?|Photographers?|"
    r"Dentists?|Plumbers?|Ironmongers?|Chemists?|Butchers?|Fishmongers?|Confectioners?|Stationers?|Drapery|Seedsmen|"
    r"Providers|Self[- ]?Serv(?:e|ice)|"
    r"Nurserym[ae]n|Tanner(?:y|s)|Druggists?|Hatters?|Furnishers?|Undertakers?|Upholsterers?|Tinsmiths?|Saddlers?|Bootmakers?|"
    r"Jewelry|Warehouse|Superettes?|Variet(?:y|ies)|Clubs?|Bootery|Booterie|Hotel|Inn|Tavern|Lumber|Elevator|"
    r"Plant|Greenhouse|Cycles?|Oil|Gas|Ice|Coal|Fuel|Implements?|(?<=& )Body|Salon|Barbers?|Cobbler|Loans?|"
    r"Insurance|Realty|Agents?|Brokers?|Bottling|Paints?|Wallpapers?|Floral|Optical|Hdwe|Pavilion|"
    r"Chandlers?|Provisioners?|Purveyors?|Costumiers?|Milliners?|Modiste|Dressmakers?|Haberdashers?|Optometrists?|"
    r"Auctioneers?|Contractors?|Electricians?|Decorators?|Blacksmiths?|Watchmakers?|Silversmiths?|Goldsmiths?|"
    r"Cabinet ?makers?|(?:Store|Shop)keepers?|Perfumers?|Wheelwrights?|Steamships?|Coaches|Taxi|Cabs?|Livery|"
    r"Librar(?:y|ies)|Cinema|Opticals?|Cut[- ]Rate|Trust|Savings(?: (?:&|and) Loans?)?|"
    r"(?:Motor|Auto|Car|Truck|Tractor|Implement) Sales|"
    r"Foods|Provisions|Meats|Shoes|Seeds?|Hats|Fashions|Labels|Pianos?|Music|Books|Toys|Gifts|Liquors|Wines|Tires?|Farms?|"
    r"Gardens?|Orchards?|Ranch|Bank|Home|City|Town|Barn|World|Land|Village|Way|King|Castle)\b",
    re.IGNORECASE,
)
_GOODS_TOO: Final = re.compile(
    r"\b(?:Jewelry|Plant|Cycles?|Oil|Gas|Ice|Coal|Fuel|Implements?|Lumber|Loans?|Paints?|Wallpapers?|Insurance|"
    r"Foods|Provisions|Meats|Shoes|Seeds?|Hats|Fashions|Labels|Pianos?|Music|Books|Toys|Gifts|Liquors|Wines|Tires?|"
    r"Drugs?|Radio|Appliances?|Feed|Products|Crafts|Home|Auto)\b",
    re.IGNORECASE,
)
DIME_STORE: Final = re.compile(
    r"\b(?:\d+c?,? )?\d+c? (?:to|and|&) (?:\d+c|\$1(?:\.00)?) Stores?\b|(?<=[a-z'’A-Z] )5 ?(?:&|and|-) ?10\b(?! ?[c¢])",
    re.IGNORECASE,
)
# what town stores called themselves from the 1880s on, in words that name nobody
BAZAAR: Final = re.compile(
    r"the (?:[a-z]+ )?(?:fair|hub|leader|bazaar|model|emporium|bee ?hive|toggery|racket|"
    r"palace|globe|rule|popular|elite|vogue|front)|cash (?:&|and) carry|cash store",
    re.IGNORECASE,
)
# what theatres were called everywhere, without the word
THEATRE: Final = re.compile(
    r"(?:the )?(?:new )?(?:strand|bijou|rialto|majestic|orpheum|lyric|lyceum|palace|gem|princess|empress|regent|"
    r"capitol|roxy|grand|star|isis|crystal|liberty|colonial|hippodrome|alhambra|odeon|savoy|tivoli|empire|paramount|ritz|"
    r"criterion|gaiety|garrick|novelty|victory|dreamland|avalon|opera house)",
    re.IGNORECASE,
)
_SHORT_FORENAME: Final = (
    r"(?i:Geo|Wm|Chas|Jas|Jno|Thos|Robt|Jos|Saml|Sol|Benj|Edw|Alex|Theo|Fred|Hy|Danl?|Abr|Aug|Herm)\. ?"
)
_INITIALS: Final = re.compile(
    rf"^(?:Mrs?\.? )?(?:[A-Z]\. ?& ?)?(?:{_SHORT_FORENAME}|[A-Z]\. ?|[A-Z] ){{1,3}}[A-Z][A-Za-z'’]{{2,}}"
    r"(?P<surname> [A-Z][A-Za-z'’]{2,})?"
    r"(?:[,.]? (?:& )?(?:Co|Bros|Sons?|Ltd|Inc)\.?,?)*$"
)
_TITLE: Final = re.compile(
    r"^(?i:Mrs|Mme|Madame|Miss|Misses|Mr|Dr|Prof|Messrs)\b\.? (?:[A-Z]\. ?){0,2}[A-Z][A-Za-z'’]{2,}"
    r"(?: [A-Z][A-Za-z'’]{2,})?$"
)
_OWNER: Final = re.compile(
    r"^[A-Z][a-z]+ (?:[A-Z]\. ?){1,3}[A-Z][A-Za-z'’]{2,}$|^[A-Z]{3,} (?:[A-Z]\. ?){1,3}[A-Z]{3,}$"
)
_PERSON: Final = re.compile(r"^(?P<first>[A-Z][A-Za-z]{2,}) (?:[A-Z]\. ?)?(?P<last>[A-Z][A-Za-z'’]{2,})$")
PAIR: Final = re.compile(
    r"^(?:(?i:Messrs)\.? )?[A-Z][\w'’.]+,? (?:(?:[A-Z][\w'’.]+,? )?)(?:&|and|AND) "
    r"[A-Z][\w'’.]+(?:,? (?:Co|Company|Inc|Ltd|Limited)\.?)?$"
)
_POSSESSIVE: Final = re.compile(r"^[A-Z][A-Za-z]{2,}(?:[- ][A-Z][a-z]+)?(?:['’][Ss]|[sS]['’])(?: (?P<trade>.+))?$")
_WEARERS: Final = re.compile(
    r"(?:m[ae]n|wom[ae]n|lad(?:y|ies)|boy|girl|child(?:ren)?|misses|miss|gent|gentlem[ae]n|kid|bab(?:y|ies)|infant|youth|"
    r"mother|father|bride|today|tomorrow|season|winter|summer|spring|nature|world|dealer|grocer|week|year)['’s]",
    re.IGNORECASE,
)
_ABROAD: Final = re.compile(
    r"^(?i:Maison|Grands Magasins|Magasins?|Chez|Casa|Veuve|Comptoir|Bazar|[ÉE]tablissements|[ÉE]ts\.?) "
    r"(?:(?i:de|du|des|la|le|al|el) )*(?!Nouveaut)[A-Z]\w+"
)
# a letter that is a word or a country's, as in "A Debt of Honor", "U.S. Choice"
_NO_INITIALS: Final = re.compile(r"^A [A-Z][a-z]|^I [A-Z]|^U\. ?S\.", re.ASCII)
_ARTICLE: Final = re.compile(r"^A (?P<thing>[A-Z]+)$")  # in capitals as "A CARPET"
# what is said of shops in general: "NEW STORE", "14 neighborhood stores"
_SAID_OF_SHOPS: Final = re.compile(
    r"^(?:(?i:\d+|all|any|both|every|most|no|other|our|these|those|your|how|new|two|three|four|five|six|seven|eight)"
    r"(?![\w'’])\W*)+(?:[a-z]\w*(?: |$))*$"
)
_DOUBLE: Final = re.compile(r"^[A-Z][a-z]{2,}-[A-Z][a-z]{2,}$|^[A-Z]{3,}-[A-Z]{3,}$")
_OF_TOWN: Final = re.compile(r"(?<=\w{3}) of (?:[A-Z][a-z]+|[A-Z]{3,})(?: [A-Z]\w+)?$")
# who signs for a house that others own
OFFICER: Final = re.compile(
    r"\b(?:(?:Traffic|General|Gen['’]?l|Business|Sales|Vice|Station)\.? )?(?:Manager|Mgr|Pres(?:ident|['’]?t)|"
    r"Sec(?:retary|['’]y)|Superintendent|Supt|Cashier|Treasurer|G\. ?P\. ?A|"
    r"(?:Pass(?:enger)?|Ticket|Freight)\.? (?:Agent|Agt))\b",
    re.IGNORECASE,
)
PROPRIETOR: Final = re.compile(rf"\bProp(?:rietor)?s?\b|{OFFICER.pattern}", re.IGNORECASE)
# "Thorne, Jeweler", "Thorne, the Hatter"
_CRAFTSMAN: Final = re.compile(r", ?(?:the )?(?P<trade>[a-z]+(?:er|or|ist|ian|man|smith)s?)\b", re.IGNORECASE)
PRESENTS: Final = r" (?:presents?|announces?|invites|offers|introduces|celebrates)\b"
_COMMON: Final = (
    word_list("slogan") | word_list("function") | word_list("prose") | word_list("particulars") | word_list("enquiry")
)
_LONG: Final = 6  # letters of a word that one wrong letter leaves plain
_CLOSING: Final = 2  # characters after a firm's word that closes a name: a point and a mark


def weigh_form(text: str, after: str) -> tuple[float, str]:
    """Return how much a name's form says, and what it is; `after` is what stands behind it on its line."""
    text = _OF_TOWN.sub("", text)
    if dime := DIME_STORE.search(text):
        return 0.8, f"“{dime[0]}”"
    houses = list(HOUSE.finditer(text))
    if houses and len(rest := HOUSE.sub("", text).strip(" &.,")) >= 2:
        plain = is_plain(rest) and not FIRM.search(text)
        if _SAID_OF_SHOPS.match(rest):
            return 0.0, ""
        return (0.8 if houses[-1].end() >= len(text) - _CLOSING else 0.4) - 0.4 * plain, f"“{houses[-1][0]}”"
    if _ABROAD.match(text):
        return 0.7, "what shops of the Levant call themselves"
    if _is_with_initials(text) or _OWNER.match(text) or _TITLE.match(text):
        # the owner named under a shop's own name
        return (0.05 if PROPRIETOR.match(after.strip(" ,.")) else 0.7), "initials and a name"
    if PAIR.match(text) and _is_of_names(text) and not re.search(r"[a-z]{4}\. ", text):
        return 0.6 - 0.2 * names_goods(text), "two names"
    if (craft := _CRAFTSMAN.match(after)) and _may_be_surname(text, craft["trade"]):
        return 0.6, "a name before its trade"
    if re.match(PRESENTS, after) and not is_plain(text):
        return 0.6, "presents what is offered"
    person = _PERSON.match(text)
    if person and person["first"].lower() in word_list("forenames") and not names_goods(text):
        return 0.6, "a forename and a name"
    own = _POSSESSIVE.match(text)
    if own and not _WEARERS.match(text) and (own["trade"] is None or is_trade_line(own["trade"])):
        return 0.5 + 0.1 * (own["trade"] is not None), "a name in the possessive"
    if _DOUBLE.match(text) and not find_nouns(text) and is_coined(text):
        return 0.4, "a double name"
    return _weigh_trade(text)


def _is_with_initials(text: str) -> bool:
    """Say whether a text is initials and a name; with two words behind them it may be an entry: "D. Stew Pots"."""
    named = _INITIALS.match(text)
    if named is None or _NO_INITIALS.match(text):
        return False
    if (one := _ARTICLE.match(text)) and is_word(one["thing"].lower()):
        return False
    return named["surname"] is None or not names_goods(text)


def _is_of_names(pair: str) -> bool:
    """Say whether one of two partners is neither a word of the language nor goods, as one of "Corbelle & Rusk"."""
    return any(
        not is_plain(name) and not names_goods(name) for name in re.split(r" (?:&|and) ", pair, flags=re.IGNORECASE)
    )


def _may_be_surname(text: str, trade: str) -> bool:
    """Say whether one word or two may be whose trade stands behind them."""
    craftsman = HOUSE.fullmatch(trade) or TRADE.fullmatch(trade)
    return (
        craftsman is not None
        and re.fullmatch(r"[A-Z][\w'’]+(?: [A-Z][\w'’]+)?", text) is not None
        and not names_goods(text)
    )


def _weigh_trade(text: str) -> tuple[float, str]:
    if _WEARERS.match(text):
        return 0.0, ""
    text = _mended_trade(re.sub(r"^The ", "", text, flags=re.IGNORECASE))
    trades = list(TRADE.finditer(text))
    if (
        not trades
        or trades[-1].end() < len(text) - _CLOSING
        or len(rest := text[: trades[-1].start()].strip(" &,")) < 3
    ):
        return 0.0, ""
    goods = bool(_GOODS_TOO.fullmatch(trades[-1][0]))
    return 0.4 - 0.2 * (goods and is_plain(rest)), f"“{trades[-1][0]}”"


@lru_cache(maxsize=4096)
def _mended_trade(text: str) -> str:
    """Return a text whose last word is a misread word of trades as printed: one letter of a long word is wrong."""
    first, _, last = text.rpartition(" ")
    word = last.lower()
    if not first or len(word) < _LONG or not word.isalpha() or is_word(word):
        return text
    near = {
        w for i in range(1, len(word)) for c in ascii_lowercase if TRADE.fullmatch(w := word[:i] + c + word[i + 1 :])
    }
    return f"{first} {near.pop().capitalize()}" if len(near) == 1 else text


def is_trade_line(text: str) -> bool:
    """Say whether a line is a trade and nothing that names anybody: "Super Markets", "Furniture Company"."""
    rest = TRADE.sub("", HOUSE.sub("", text))
    return bool(HOUSE.search(text) or TRADE.search(text)) and is_plain(rest)


def names_kind(text: str) -> bool:
    """Say whether a text has a word in it that shops call themselves by and that names no article, or two that do."""
    if "&" in text and TRADE.search(text):
        return True
    return any(not _GOODS_TOO.fullmatch(m[0]) for m in (*HOUSE.finditer(text), *TRADE.finditer(text)))


def names_goods(text: str) -> bool:
    """Say whether a text names an article, outside of what a shop calls itself by."""
    return has_goods(HOUSE.sub("", text))


def is_common(text: str) -> bool:
    """Say whether a text has a word of everyday talk or of goods in it, which a logotype has not."""
    words = _plain_words(text)
    return is_plain(text) or has_goods(text) or any(word in _COMMON for word in words)


def is_coined(text: str) -> bool:
    """Say whether a text has no everyday word and is no two of them joined, as "Cash-Raising" is."""
    return not is_common(text) and not all(
        is_word(part) or part.endswith("ing") for part in re.findall(r"[a-z]+", text.lower())
    )


def is_plain(text: str) -> bool:
    """Say whether a text is made of words of the trade and the language only, so that it names nobody."""
    if load_vocabulary().find(text):
        return True
    words = _plain_words(text)
    return all(w in _COMMON or w in stops() or w in praise() or is_word(w) for w in words)


def _plain_words(text: str) -> list[str]:
    return [word for word in re.findall(r"[a-zà-ÿ-]+", text.lower()) if len(word) > 1 and word not in ("the", "and")]
