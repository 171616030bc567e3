"""The inline Markdown parser, noting for every token where in its block it began (``token.meta["at"]``)."""

from __future__ import annotations

from markdown_it.parser_inline import ParserInline
from markdown_it.rules_inline import StateInline


class PlacedInline(ParserInline):
    """Parses as its parent does; only the loop over the rules is written anew to see where each one starts.

    Text that no rule takes gathers until another token comes: it began where the first of it stood.
    """

    def tokenize(self, state: StateInline) -> None:
        """Generate tokens for the input range, each with its place."""
        rules = self.ruler.getRules("")
        most = state.md.options["maxNesting"]
        tokens = state.tokens
        began = state.pos  # of the text that gathers
        while state.pos < state.posMax:
            at = state.pos
            gathering = bool(state.pending)
            if not gathering:
                began = at
            count = len(tokens)
            done = False
            if state.level < most:
                for rule in rules:
                    done = rule(state, False)
                    if done:
                        break
            if not done:
                state.pending += state.src[at]
                state.pos = at + 1
            if len(tokens) > count:
                place = began if gathering else at
                for index in range(count, len(tokens)):
                    tokens[index].meta.setdefault("at", place)
                    place = at
                began = at
        if state.pending:
            state.pushPending()
            tokens[-1].meta["at"] = began
