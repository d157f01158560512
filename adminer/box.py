"""The rectangle that every fact was read from, and its geometry; origin top left."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Box:
    """Hold a rectangle in pixels of the original scan."""

    x: int
    y: int
    w: int
    h: int

    @property
    def right(self) -> int:
        """Return the first column right of the box."""
        return self.x + self.w

    @property
    def bottom(self) -> int:
        """Return the first row below the box."""
        return self.y + self.h

    @property
    def centre(self) -> tuple[float, float]:
        """Return the middle of the box as (x, y)."""
        return self.x + self.w / 2, self.y + self.h / 2

    @property
    def area(self) -> int:
        """Return the area in square pixels."""
        return self.w * self.h

    def holds(self, x: float, y: float) -> bool:
        """Say whether a point lies in the box."""
        return self.x <= x < self.right and self.y <= y < self.bottom

    def across(self, other: Box) -> int:
        """Return how many columns both boxes have in common; below 0, how far apart they stand side by side."""
        return min(self.right, other.right) - max(self.x, other.x)

    def beside(self, other: Box) -> int:
        """Return how many rows both boxes have in common; below 0, how far apart they stand one over the other."""
        return min(self.bottom, other.bottom) - max(self.y, other.y)

    def same_row(self, other: Box) -> bool:
        """Say whether two boxes share half the height of the lower one."""
        return self.beside(other) >= 0.5 * min(self.h, other.h)

    def overlap(self, other: Box) -> int:
        """Return the shared area with another box in square pixels."""
        w, h = self.across(other), self.beside(other)
        return w * h if w > 0 and h > 0 else 0

    def iou(self, other: Box) -> float:
        """Return intersection over union with another box, 0 to 1."""
        shared = self.overlap(other)
        union = self.area + other.area - shared
        return shared / union if union else 0.0

    def joined(self, other: Box) -> Box:
        """Return the smallest box around both."""
        x, y = min(self.x, other.x), min(self.y, other.y)
        return Box(x, y, max(self.right, other.right) - x, max(self.bottom, other.bottom) - y)
