"""The phones that a network tells apart, by language; LANGUAGE in the environment says which (en, or fr)."""

import os

ENGLISH = ("AA AE AH AO AW AY B CH D DH EH ER EY F G HH IH IY JH K L M N NG OW OY P R S SH T TH UH UW V W Y Z ZH").split()
# As espeak-ng writes French, without what few tell apart: "brun" is heard as "brin", "gn" as "ny".
FRENCH = "i e ɛ a ɔ o u y ø œ ə ɛ̃ ɑ̃ ɔ̃ p b t d k ɡ f v s z ʃ ʒ m n ŋ l ʁ j w ɥ".split()
# There are few recordings of French: the French network learns from English people too. What both languages have is one
# phone; what only English has gets outputs of its own, which are not shipped.
AS_FRENCH = dict(
    AO="ɔ", B="b", CH="t ʃ", D="d", EH="ɛ", F="f", G="ɡ", IY="i", JH="d ʒ", K="k", L="l", M="m", N="n", NG="ŋ", P="p", S="s",
    SH="ʃ", T="t", UW="u", V="v", W="w", Y="j", Z="z", ZH="ʒ",
)  # fmt: skip

LANGUAGE = os.environ.get("LANGUAGE", "en")
# What is shipped, and what is learned: these and perhaps more behind them.
PHONES = {"en": ENGLISH, "fr": FRENCH}[LANGUAGE]
LEARNED = PHONES if LANGUAGE == "en" else FRENCH + [p for p in ENGLISH if p not in AS_FRENCH]
INDEX = {p: i + 1 for i, p in enumerate(LEARNED)}


def spelled(phones):
    """Outputs of the phones of a clip, in either language's phones; of those that the network has."""
    if LANGUAGE == "fr":
        # The one word that both languages share is to be heard however it is said.
        phones = f" {phones} ".replace(" S T AA P ", " s t ɔ p ")
        phones = " ".join(AS_FRENCH.get(p, p) for p in phones.split())
    return [INDEX[p] for p in phones.split() if p in INDEX]
