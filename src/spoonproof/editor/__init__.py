"""The language server: the desk's calls over texts that are still being written."""
