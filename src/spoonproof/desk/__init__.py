"""A local page over a channel's folder."""
