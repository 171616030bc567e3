"""Turns of phrase with a "no" that denies nothing: "nobody told me that ...", "no wonder", "contrary to belief".

This is the one list of them, whoever asks what a sentence denies.
"""

from __future__ import annotations

import re

NOT = r"(?:not|never|cannot|nobody|no one|nothing|dont|doesnt|cant|wont|isnt|[a-z]+n't)"
"""Words that say no."""
STANDS = re.compile(
    r" (?:"
    # Others who are told not to know or not to tell it: it is so all the same.
    rf"(?:{NOT}|why did nobody|no (?:book|doctor|midwife|mum|mom|parent)s?) (?:\w+ ){{0,2}}?(?:knew|known|realis\w+"
    r"|realiz\w+|notic\w+|warn\w*|mention\w*)(?: (?:me|us|you|people|parents|mums))?"
    rf"|(?<! i )(?<! we )(?<! i'm )(?<! we're )(?<! i've )(?!shouldn't |mustn't ){NOT} (?:ever )?(?:tells?|told"
    r"|mention to) (?:(?:any|new|first time|young|most|other|the) )?"
    r"(?:me|us|you|mums|moms|mothers|parents|people|families)"
    r"|(?:i|we) (?:didn't|did not) (?:\w+ )?know|(?:they|people|parents|mums) (?:\w+ )?(?:don't|do not) (?:\w+ )?know"
    r"|(?:can't|cannot|can not|couldn't|won't|will not|wouldn't|(?:[a-z]+'ll|will) (?:never|not)) (?:\w+ )?believe"
    r"|believe (?:it|me) or not|(?:[a-z]+n't|not|never) you (?:think|believe|find|agree)"
    # What nobody may deny, doubt or forget.
    rf"|(?:{NOT}|no) (?:\w+ ){{0,2}}?(?:deny|denies|denying|doubt\w*|dispute\w*|argu\w+)"
    r"(?: for a (?:second|minute|moment))?"
    r"|(?:[a-z]+n't|do not|never|not|people|they|we|i|you|mums|parents|some|often|to|easily) (?:often |always )?"
    r"forg[eo]t\w*|(?:beyond|without)(?: a)?(?: shadow of a)? doubt|no question about (?:it|that)"
    r"|(?:no|not|don't|do not|never|stop) (?:need|reason|have)? ?(?:to )?(?:panic|worry|worrying|fret|stress)"
    r"(?! (?:about|over|that|if) )"
    # What is no myth, and the views of others that are waved aside before it is said.
    rf"|(?:no|not|no longer|[a-z]+n't|nor) (?:just |only |really |merely )?(?:an? |the )?(?:old |urban |common "
    r"|popular )?(?:myths?|wives'? tales?|misconceptions?|lie|nonsense|rubbish)|far from (?:being )?an? (?:\w+ )?myth"
    r"|far from(?= (?!convinc|prov|show)\w+ing )"
    r"|contrary to (?:popular|common|general|what people's) (?:belief|opinion|wisdom|thinking)(?! that )"
    r"|(?:forget|ignore|never mind|despite|contrary to|whatever|no matter) what (?:(?!says? )\w+(?:'ve)? ){1,3}"
    r"(?:say|says|said|heard|read|told|think|thinks|believe)(?! (?:about|that|of|to|on|is|was) )"
    r"|(?:can't|cannot|couldn't|won't|never|not|don't) (?:\w+ )?stop(?= \w+ing )"
    # Those who know best are waved aside before it is said: "it's not true that doctors know best".
    rf"|{NOT} (?:(?:really|always) )?true that (?:the )?(?:\w+ ){{1,3}}?(?:knows? (?:best|better|everything)"
    r"|(?:is|are) always right)"
    # What nothing but itself is meant by: "never ate anything but nuts".
    rf"|{NOT} (?:\w+ ){{0,3}}?(?:anything|anyone) (?:but|except|besides|other than)"
    # Turns of phrase whose "no" is part of them.
    r"|(?:don't|do not|doesn't|does not) need teeth|without (?:question|fail)|nothing (?:beats|but|short of)"
    r"|no (?:secret|wonder|surprise|joke|kidding|news|equal|rival|better(?: way)?|matter|less than|doubt|question)"
    r"|not (?:only|just|for nothing|kidding|joking|rocket science|being funny|news|everybody knows|everyone knows"
    r"|many (?:people|mums|parents) know)|isn't (?:it|news)|aren't they|don't you|doesn't it|or not|why not"
    r"|(?:never|don't) underestimate|don't (?:miss|laugh|panic|ask me why|tell anyone)|can't stand|wouldn't believe"
    r"|(?:can't|cannot|can not|couldn't) (?:\w+ )?(?:stress|emphasi[sz]e|repeat|recommend|overstate)"
    r"(?: (?:it|this|that))?(?: (?:enough|too (?:often|much|strongly)))?"
    r"|no getting (?:around|round|away from) (?:it|that|the fact)|no two ways about it|not up for debate"
    r"|(?:can't|cannot) (?:go wrong|beat|say enough)|never (?:fails?|guess|mind the)|second to none|undeniabl\w*"
    r"|(?:don't|do not|never) (?:skip|stop(?:ped)?)|(?:not going to|not gonna|won't|will not) lie|haven't you heard"
    r"|didn't you know|(?:isn't|not|hardly|never) (?:widely|well|commonly) known|hardly news"
    r")(?= )"
)
"""Words with a "no" in them that let stand what follows: its teller holds it."""


def standing(words: str) -> str:
    """What ``plain`` gave, less the turns of phrase whose "no" denies nothing."""
    return STANDS.sub("", words)
