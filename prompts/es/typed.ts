/** What may be typed in the interview of a new engine besides values. */
export const typedWords = {
  yes: ['sí', 'si', 's'],
  no: ['no', 'n'],
  not: ['no', 'sin', 'nunca'],
  and: ['y', 'e'],
  none: ['ninguno', 'ninguna'],
  to: ['a', 'hasta'],
  below: ['bajo', 'por debajo de'],
  above: ['desde', 'sobre'],
  page: ['p', 'p.', 'pág.', 'página'],
  plate: ['placa'],
  manual: ['manual'],
  measured: ['medido', 'medida'],
  seen: ['visto', 'vista', 'tablero'],
  assumed: ['supuesto', 'supuesta'],
  list: ['lista'],
  quit: ['salir'],
} as const;
