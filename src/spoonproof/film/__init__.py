"""The filming package: script, captions, lists, and what is checked after the edit."""
