/** The phones that the network tells apart, in the order of its outputs: those of the CMU dictionary. */
export const phones: readonly string[] =
  'AA AE AH AO AW AY B CH D DH EH ER EY F G HH IH IY JH K L M N NG OW OY P R S SH T TH UH UW V W Y Z ZH'.split(
    ' ',
  );

/** Output that stands for no phone: silence, noise, or more of the one before. */
export const blank = 0;

const outputs = new Map(phones.map((phone, i) => [phone, i + 1]));

/** Output of a phone; undefined when the network does not know it. */
export const outputOf = (phone: string): number | undefined => outputs.get(phone);
