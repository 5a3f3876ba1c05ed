/** Fields of a 29-bit identifier, SAE J1939-21 section 5.2 (from memory); tshark reads the same in the tests. */
export interface CanId {
  /** 0 (first on the bus) to 7. */
  readonly priority: number;
  /** Parameter group number, 0 to 0x3FFFF: extended data page, data page, PDU format and, above 239, PDU specific. */
  readonly pgn: number;
  /** Address of the sender, 0 to 255. */
  readonly source: number;
  /** Whom it is for; `GLOBAL_ADDRESS` for all, which every group above PDU format 239 (PDU2) is. */
  readonly destination: number;
}

export const GLOBAL_ADDRESS = 255;

const PRIORITY_SHIFT = 26;
const EXTENDED_DATA_PAGE_BIT = 1 << 25;
const DATA_PAGE_BIT = 1 << 24;
const PDU_FORMAT_SHIFT = 16;
const PDU_SPECIFIC_SHIFT = 8;
const PAGES_AND_FORMAT = EXTENDED_DATA_PAGE_BIT | DATA_PAGE_BIT | (0xff << PDU_FORMAT_SHIFT);
/** From this PDU format on, PDU specific belongs to the group number (PDU2); below it is an address (PDU1). */
const FIRST_PDU2_FORMAT = 240;

const pduFormatOf = (id: number): number => (id >>> PDU_FORMAT_SHIFT) & 0xff;
const pduSpecificOf = (id: number): number => (id >>> PDU_SPECIFIC_SHIFT) & 0xff;
const isPdu2 = (id: number): boolean => pduFormatOf(id) >= FIRST_PDU2_FORMAT;

export const priorityOf = (id: number): number => (id >>> PRIORITY_SHIFT) & 0x7;
export const sourceOf = (id: number): number => id & 0xff;
export const destinationOf = (id: number): number => (isPdu2(id) ? GLOBAL_ADDRESS : pduSpecificOf(id));
export const pgnOf = (id: number): number =>
  ((id & PAGES_AND_FORMAT) >>> PDU_SPECIFIC_SHIFT) | (isPdu2(id) ? pduSpecificOf(id) : 0);

/**
 * The 29-bit identifier of these fields; of a PDU2 group `destination` is not sent.
 * @throws RangeError when a field does not fit its bits, or a PDU1 group has a low byte that is not zero
 */
export function encodeCanId({ priority, pgn, source, destination }: CanId): number {
  check('priority', priority, 0x7);
  check('pgn', pgn, 0x3ffff);
  check('source', source, 0xff);
  check('destination', destination, 0xff);
  const body = (pgn << PDU_SPECIFIC_SHIFT) | source;
  const pdu1 = !isPdu2(body);
  if (pdu1 && (pgn & 0xff) !== 0)
    throw new RangeError(`pgn ${pgn} has an address in its low byte; give it as destination.`);
  return (priority << PRIORITY_SHIFT) | body | (pdu1 ? destination << PDU_SPECIFIC_SHIFT : 0);
}

function check(name: string, value: number, max: number): void {
  if (!Number.isInteger(value) || value < 0 || value > max)
    throw new RangeError(`${name} is ${value}; it has to be a whole number from 0 to ${max}.`);
}
