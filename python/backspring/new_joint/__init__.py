"""Design files made for a maker who has none yet: a starter, one from calipers, a new joint."""
