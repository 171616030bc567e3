"""The guide's reference, made from the code so that it can't say anything else than the code does.

``python -m spoonproof.reference`` writes it anew: ``guide/reference/*.md`` and the picture in ``DEVELOPERS.md``.
"""
