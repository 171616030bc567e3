"""A channel as static pages."""
