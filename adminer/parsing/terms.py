"""The terms of trade of an advert: every printed condition found with its kind, its words and its value.

The wordings are the common practice of American stores, no single source. Two kinds of finding come out:
terms that colour one price ("with card", "reg.") and terms of an offer or the whole advert ("limit two").
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from typing import Final, Literal

Scope = Literal["price", "offer"]

MONEY: Final = (
    r"(?:\$ ?\d+(?:[.,]\d\d)?|\d+\.\d\d|\d+ ?(?:¢|cents?|dollars?)|(?:one|two|three|five|ten|twenty) dollars?)"
)
_NUMBER: Final = r"(?:\d{1,4}|one|two|three|four|five|six|seven|eight|ten|twelve|dozen)"
_CARD: Final = r"(?:(?:[\w'’&.-]+ ){0,4}?)[ce]ard(?! (?:table|game|party))"


@dataclass(frozen=True, slots=True)
class Term:
    """Hold one term found: characters start to end, kind, scope, and its value where it has one."""

    start: int
    end: int
    kind: str
    scope: Scope
    value: str | None = None


@dataclass(frozen=True, slots=True)
class _Rule:
    kind: str
    scope: Scope
    pattern: re.Pattern[str]


def _rule(kind: str, scope: Scope, *wordings: str) -> _Rule:
    return _Rule(kind, scope, re.compile(r"(?<![A-Za-z])(?:" + "|".join(wordings) + r")", re.IGNORECASE))


# Order matters: an earlier rule takes its words from a later one.
_RULES: Final[tuple[_Rule, ...]] = (
    _rule(
        "without_card",
        "price",
        rf"(?:with[- ]?out|w/o|w[- ]o|no|non)[- ]{_CARD}(?: ?holders?)?(?![a-z])",
        r"(?:price )?(?:if you have no|not having a|without a) card",
        r"to (?:all )?others",
        r"without(?= ?(?:$|\n|[.,;)]))",
    ),
    _rule(
        "cardholder",
        "price",
        rf"(?:with|w/|w\. ?|on your|by|for your|when you present|upon presentation of|present(?:ing)?) ?{_CARD}(?: ?holders?)?(?! orders?)(?![a-z])",
        r"[ce]ard[- ]?holder['’s]*(?: (?:price|special|only))?",
        r"(?:punch|premium|dividend|club|savings?|bonus|thrift|china)?[- ]?card price",
    ),
    _rule(
        "coupon",
        "price",
        r"(?:with|w/|on|for|and|plus|clip|redeem|present|mail|use|bring|fill (?:in|out)|send|sign) ?(?:(?:this|the|your|each|one|a|our|every|in|above|below|attached)[- ]){0,2}coupons?",
        r"coupon (?:price|worth|good|value|special)",
        r"(?:this|valuable|special) coupon(?: (?:is )?(?:good for|worth|entitles))?",
        r"coupon(?= ?(?:$|\n|[:.!—-]))",
    ),
    _rule(
        "with_purchase",
        "price",
        rf"(?:with|on|for) (?:(?:each|every|a|an|any|your|the|one|minimum|purchase of|purchases of|order of|orders of) ){{0,3}}{MONEY}(?: or (?:more|over))?(?: (?:food|grocery|meat|cash|or|more|total|minimum|worth of))*(?: (?:purchases?|orders?|groceries|or more|or over|worth of groceries))",
        rf"(?:with|on) (?:(?:each|every|a|any|your|the|minimum) ){{0,2}}(?:purchases?|orders?) (?:of|totaling|amounting to) {MONEY}(?: or (?:more|over))?",
        rf"(?:when you (?:buy|purchase|spend)|for each|for every|with each|with every) {MONEY}(?: (?:you spend|spent|worth|or more))*",
        r"with (?:(?:each|every|a|any|your|the) ){1,2}(?:\w+ ){0,3}purchase(?: of)?",
        r"with (?:the )?purchase of",
    ),
    _rule(
        "stamps",
        "price",
        rf"(?:(?:and|plus|for|with|only|free with) )?{_NUMBER}(?: \w+)? ?(?:(?:filled|full|trading|saving|premium|bonus|extra|free) )*(?:stamp )?books?(?: (?:of|filled with) (?:\w+ )?stamps)?(?= ?(?:$|\n|[.,;+)]| of | and | plus ))",
        rf"(?:(?:and|plus|for|with|free with) )?{_NUMBER} (?:(?:extra|free|trading|saving|premium|bonus|green|gold|red|blue) ){{0,2}}stamps",
        rf"(?:(?:free )?(?:with|for|save|and|plus) )?(?:{MONEY}|{_NUMBER})(?: (?:worth of|in))?(?: (?:our|cash|sales))? ?(?:register )?(?:tapes?|receipts?|slips)(?![a-z])",
        r"save (?:your|our) (?:(?:cash|sales|register|green|gold|trading) ){0,2}(?:tapes|receipts|slips|stamps)",
        r"(?:with|double|extra|free) (?:trading |saving |premium )?stamps",
    ),
    _rule(
        "punch_card",
        "offer",
        rf"{_NUMBER} punch(?:es)?(?: on| of)?(?: your| the)?(?: card)?",
        r"(?:have )?your card punched|punch card|card (?:is )?(?:completely |fully )?punched|ask for your (?:free )?(?:punch )?card|get your (?:free )?card",
    ),
    _rule(
        "expiry",
        "offer",
        r"(?:coupon |offer )?(?:expires?|void after|not good after|good (?:only )?(?:until|till|through|thru|to)|offer (?:ends?|closes|good)|(?:prices?|sale|specials?) (?:good|effective|end) (?:until|till|through|thru|to))[^\n.;!]{0,40}",
        r"(?:this|one|two) weeks? only|today only|for (?:one|a) (?:day|week) only|(?:one|three|two) days? only|for (?:a )?limited time(?: only)?|limited time(?: only| offer)?",
    ),
    _rule(
        "limit",
        "offer",
        rf"limit(?:ed)?(?: of| to)?:? {_NUMBER}(?: (?!per|to|with|each)\w+)?(?: (?:to|per|with|each) (?:a |an |each |your )?(?:customer|family|coupon|person|purchase|household|card))?",
        r"(?:only )?(?:one|two|three|\d) (?:\w+ ){0,2}(?:to|per) (?:a |each )?(?:customer|family|person|coupon|household)",
        r"(?:we reserve the )?right(?: is)?(?: reserved)? to limit(?: quantities)?|quantit(?:y|ies)(?: are)? (?:limited|rights? reserved)|limited quantit(?:y|ies)",
        r"no (?:sales )?to dealers|none (?:sold )?to dealers",
    ),
    _rule("rain_check", "offer", r"rain[- ]?checks?(?: \w+){0,3}"),
    _rule(
        "while_they_last",
        "offer",
        r"(?:only )?(?:while|as long as) (?:they|it|quantit(?:y|ies)|suppl(?:y|ies)|stocks?|our suppl(?:y|ies)|the suppl(?:y|ies))(?: of \w+)? lasts?",
        r"first come,? first served|subject to prior sale",
    ),
    _rule(
        "mail_order",
        "offer",
        r"(?:no )?(?:mail|phone|telephone|mail (?:and|or|&) (?:tele)?phone|phone or mail|c\.? ?o\.? ?d\.?)[- ]orders?(?:,? ?(?:or c\.? ?o\.? ?d\.?'?s?))?(?: (?:are |will be |promptly |carefully |please|given prompt attention|accepted|filled|taken))*",
        r"no c\.? ?o\.? ?d\.?['’]?s?|c\.? ?o\.? ?d\.?['’]?s? accepted|order by mail|(?:send|mail) (?:check|money order|stamps|coin|cash|remittance)(?: or (?:check|money order|stamps|coin|cash))*",
        r"cash with orders?|send no money|half cash",
    ),
    _rule(
        "postage",
        "offer",
        r"(?:shipping|transportation|express|freight|postage|delivery|carriage)(?: charges?)?(?: (?:is|are))? (?:pre)?paid(?: (?:east|west|north|south|within|to|on)(?: \w+){1,4})?",
        r"post[- ]?paid|postage (?:extra|free|abroad|additional|collect|prepaid)(?:[^\n.;]{0,20})?|post free|carriage (?:paid|free)",
        rf"(?:add|plus|for|enclose|include|extra|and) (?:only )?{MONEY}(?: \w+)? (?:for )?(?:postage|mailing|shipping|handling|packing)(?: and (?:handling|packing|mailing))?",
        rf"{MONEY}? ?(?:for )?postage (?:and|&) (?:handling|packing)|charges prepaid|(?:we )?(?:pay|allow) (?:the )?(?:freight|postage|express|charges)(?: (?:within|to|east|west)(?: \w+){{1,3}})?",
        r"(?:sent|shipped|delivered)(?: to your home)?(?: by (?:express|mail|freight))? (?:pre)?paid|express collect|f\.? ?o\.? ?b\.?(?: \w+)?",
    ),
    _rule(
        "deposit",
        "offer",
        rf"(?:small|{MONEY}) deposit(?: holds| will hold| required)?(?: \w+){{0,4}}|lay[- ]?a?[- ]?(?:way|by)(?: plan| now)?|will[- ]call",
    ),
    _rule(
        "instalments",
        "offer",
        rf"(?:only |just |pay )?{MONEY}c?\.? (?:down|cash)(?:[ ,;—-]+(?:and |balance |then )?{MONEY}c?\.? (?:a |per |each )?(?:week|month|weekly|monthly))?",
        rf"{MONEY}c?\.? (?:a|per|each|every) (?:week|month)|{MONEY}c?\.? (?:weekly|monthly)",
        r"(?:easy|convenient|small|weekly|monthly|budget|divided) (?:credit )?(?:terms|payments?)(?: arranged)?|no (?:money|cash) down|no (?:carrying|interest) charges?|nothing down",
        r"(?:use|open|on) (?:your|our|a) (?:\w+ )?(?:charge account|budget plan|club plan|charge[- ]a[- ]?plate|credit)|club plan|charge it|open (?:a charge )?account(?: credit)?(?: to all)?|credit to (?:you|all)|(?:bargains )?on credit|buy on (?:time|credit)",
    ),
    _rule(
        "tax",
        "offer",
        r"(?:plus|and|no|including|incl\.?|inc\.?)(?: (?:state|federal|sales|excise|luxury|city|fed\.?|\d+ ?%))* ?tax(?:es)?(?: (?:included|extra))?",
        r"(?:(?:federal|sales|state|excise|fed\.?) )*tax(?:es)? (?:is )?(?:included|incl\.?|extra|additional|paid)",
    ),
    _rule(
        "guarantee",
        "offer",
        r"(?:your )?money (?:will be )?(?:promptly |cheerfully )?(?:back|refunded|returned)(?: (?:any time|if|within|in|guarantee)(?: [\w’']+){0,6})?",
        r"satisfaction (?:is )?(?:guaranteed|or (?:your )?money)(?: (?:back|refunded))?|guaranteed (?:for )?(?:\w+[- ])?(?:\d+|one|two|three|five|six|ten)[- ](?:years?|months?|days?)|guaranteed against \w+(?: (?:and|or) \w+)?",
        r"\d+ days?['’]? (?:free )?(?:trial|examination|home test|approval)(?: \w+)?|on (?:\d+ days?['’]? )?(?:free )?approval|free (?:trial|examination|home test)|refunded if not satisf\w+",
    ),
    _rule(
        "open_stock",
        "offer",
        r"(?:(?:from|in|available in|also in|all|buy from) )?open[- ]stock(?: (?:pattern|pieces|available|prices?|at all times))?",
    ),
    _rule(
        "free",
        "offer",
        r"(?:absolutely |positively |given |yours |sent |mailed |delivered )*free(?! (?:from|of|and easy)\b)(?: (?:on request|of charge|with|for|to (?:every|each|all)|upon request|by mail|delivery|catalog(?:ue)?|booklet|sample|gift|parking))?(?![a-z-])",
        r"no (?:extra )?charge|without (?:extra )?charge|at no (?:extra )?cost|gratis|frei ins haus",
    ),
    _rule(
        "cash",
        "offer",
        r"(?:for|strictly|terms:?|spot|cash and carry|cash & carry|all sales)(?: the)? cash(?: only| and carry)?|cash[- ](?:and|&)[- ]carry",
    ),
    _rule(
        "former",
        "price",
        r"(?:was|were|formerly|former price|former|reg(?:ular(?:ly)?|\.|['’]?d)?(?: (?:price|priced|low price|sold for|selling at|at|value))?|usual(?:ly)?(?: (?:price|sells? for))?|orig(?:inal(?:ly)?|\.)?(?: price)?|always sold (?:for|at)|sold for|marked down from|reduced from|old price)(?![a-z])",
    ),
    _rule(
        "comparison",
        "price",
        r"(?:comp(?:arable|are(?: at)?|\.)?(?: values?)?(?: at| to)?|if perfect(?: would be)?|made to (?:sell|retail) (?:for|at)|list(?: price)?(?= \$| \d|:)|(?:nationally )?advertised (?:at|for)|(?:would|should) (?:sell|cost|be)(?: for| at)?|worth(?: up to)?|retails? (?:for|at)|sells? (?:elsewhere )?(?:for|at)|(?:a |regular )?(?:retail )?values? (?:up )?(?:to|of|at))(?![a-z])",
        r"(?:value|val\.)(?![a-z])",
    ),
)
_AMOUNT_IN: Final = re.compile(r"\$? ?(\d+(?:[.,]\d\d)?)")


def find_terms(text: str) -> list[Term]:
    """Return the terms found in a text, left to right, earlier rules first where they overlap."""
    found: list[Term] = []
    for rule in _RULES:
        for m in rule.pattern.finditer(text):
            if m.end() == m.start() or any(m.start() < f.end and f.start < m.end() for f in found):
                continue
            found.append(Term(m.start(), m.end(), rule.kind, rule.scope, _value(rule.kind, m[0])))
    return sorted(found, key=lambda t: t.start)


def _value(kind: str, text: str) -> str | None:
    """Return the minimum purchase, the limit or the number of stamps as a plain figure."""
    if kind in {"with_purchase", "stamps", "limit", "punch_card", "deposit"} and (m := _AMOUNT_IN.search(text)):
        return m[1].replace(",", ".")
    words = {"one": "1", "two": "2", "three": "3", "four": "4", "five": "5", "six": "6", "ten": "10", "twelve": "12"}
    if kind in {"limit", "punch_card", "stamps", "with_purchase"}:
        for word in text.lower().split():
            if word in words:
                return words[word]
    return None
