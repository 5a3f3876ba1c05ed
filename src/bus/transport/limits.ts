/** Groups of the transport protocol, SAE J1939-21 section 5.10 (from memory). */
export const CONNECTION_PGN = 0xec00;
export const DATA_TRANSFER_PGN = 0xeb00;

export const BYTES_PER_PACKET = 7;
/** Less fits one frame. */
export const LEAST_BYTES = 9;
export const MOST_BYTES = 255 * BYTES_PER_PACKET;

/** Time limits of SAE J1939-21 section 5.10.2.4 (from memory), seconds. */
/** T1: longest gap between two packets of one run. */
export const T1_NEXT_PACKET_S = 0.75;
/** T2: longest wait for the first packet after a clear to send. */
export const T2_AFTER_CLEAR_S = 1.25;
/** T3: longest wait for a clear to send or the end, after a request or the last packet of a run. */
export const T3_FOR_ANSWER_S = 1.25;
/** T4: longest hold after a clear to send for no packets. */
export const T4_HOLD_S = 1.05;

/** Two for each address would be plenty; rubbish must not fill the memory. */
export const MOST_CONNECTIONS = 512;
