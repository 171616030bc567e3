"""Statements found in text, and judged by the register and by numbers."""
