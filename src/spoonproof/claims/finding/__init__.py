"""The parts of the claim finder behind ``find_claims``: drafts, their fields, what is carried over."""
