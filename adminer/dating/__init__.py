"""Calendar, evidence, the posterior of an undated advert, the run of a promotion, money of other years."""
