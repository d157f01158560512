"""What a held-out story draws its headings, labels, forms of date and files from."""

from __future__ import annotations

from .facts import Source

HEADS = (
    "Set a Pretty Table",
    "Save on Dinnerware",
    "A Piece a Week",
    "Your Table's Best Friend",
    "The Pattern Everyone Wants",
    "Now Is the Time to Start",
    "Lovely to Look At",
    "Add to Your Set",
    "Dinnerware Days",
    "Our Greatest Offer Yet",
)
FOOD_HEADS = (
    "Week-End Specials",
    "Thrift Days",
    "Low Prices Every Day",
    "Market Day Values",
    "Food Savings",
    "Stock the Shelf",
    "Friday and Saturday Specials",
)
STORE_HEADS = (
    "China Sale",
    "White Elephant Week",
    "Anniversary Sale",
    "Fall Housewares",
    "Semi-Annual Clearance",
    "New Arrivals in Dinnerware",
)
WHERE: tuple[tuple[Source, float], ...] = (
    ("newsprint", 5),
    ("microfilm", 3),
    ("photocopy", 2),
    ("phone", 2),
    ("magazine", 1),
)
FORMS = ("dash", "dash", "thru", "from_to", "week", "range")
LABELS = (
    ("Sale", "Formerly"),
    ("Now", "Was"),
    ("Special", "Regularly"),
    ("Only", "comparable value"),
    ("Sale price", "Reg."),
)
SUFFIX = {
    "newsprint": ".jpg",
    "microfilm": ".jpg",
    "photocopy": ".png",
    "phone": ".jpg",
    "magazine": ".webp",
    "catalogue": ".jpg",
}
WIDTHS = {
    "tower": 32,
    "spread": 64,
    "burst": 52,
    "grid": 46,
    "grocery": 88,
    "handbill": 31,
    "store": 56,
    "clearance": 52,
    "coupon": 36,
    "stamps": 46,
    "mailorder": 58,
}
