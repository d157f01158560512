"""Page styles: each sets one kind of advert, in one of several layouts, from its spec."""

from __future__ import annotations

from collections.abc import Callable

from ..facts import AdvertSpec
from ..sheet import Sheet
from ..wares import bills
from . import catalogue, coupon, grocery, mailorder, store, weekly

STYLES: dict[str, Callable[[Sheet, AdvertSpec, int], str]] = {
    "tower": weekly.tower,
    "spread": weekly.spread,
    "burst": weekly.burst,
    "grid": weekly.grid,
    "grocery": grocery.broadside,
    "handbill": grocery.handbill,
    "store": store.columns,
    "clearance": store.clearance,
    "catalogue": catalogue.price_list,
    "mailorder": mailorder.page,
    "coupon": coupon.coupon,
    "stamps": coupon.premium,
    "bill": bills.bill,
    "single": bills.single,
    "prose": bills.prose,
}
