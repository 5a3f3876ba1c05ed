import type { BySentence } from '../types.ts';

/** What is wrong with an engine profile or a job card that was brought, by its English sentence. */
export const files: BySentence = {
  // What is wrong with a job card.
  'Job card {}: {words}': 'Hoja de trabajo {}: {words}',
  'It holds vehicle, engine, technician, second and supervisor, and may hold {}.':
    'Lleva vehicle, engine, technician, second y supervisor, y puede llevar {}.',
  'Job card {} cannot be read ({}); give the path of a JSON file.':
    'La hoja de trabajo {} no se puede leer ({}); dé la ruta de un archivo JSON.',
  'Job card {} is not JSON; correct it or leave it out.':
    'La hoja de trabajo {} no es JSON; corríjala o quítela.',

  'Job card: {words} Name a card with --job.': 'Hoja de trabajo: {words} Indique una hoja con --job.',
  '"{}" is invented; on the card of a real engine stand those who start it, and its vehicle.':
    '«{}» es inventado; en la hoja de un motor real figuran quienes lo arrancan, y su vehículo.',
  '"{}" is technician and second person at once; name somebody else, who stands at the red control.':
    '«{}» es a la vez técnico y segunda persona; indique a otra persona, que esté junto al mando rojo.',
  '"{}" is technician and supervisor at once; name somebody else, who signs the start off.':
    '«{}» es a la vez técnico y jefe de taller; indique a otra persona, que firme el arranque.',
  '{} (invented)': '{} (inventado)',
  'Invented vehicle': 'Vehículo inventado',
  'Invented generating set': 'Grupo electrógeno inventado',
  'Invented boat': 'Barco inventado',
  'Invented machine': 'Máquina inventada',

  // What is wrong with a profile.
  'Profile {}: {words}': 'Perfil {}: {words}',
  'the card: {} is not a known key; remove it or correct its spelling.':
    'la hoja: {} no es una clave conocida; quítela o corríjala.',
  'the profile: {} is not a known key; remove it or correct its spelling.':
    'el perfil: {} no es una clave conocida; quítela o corríjala.',
  'the card: {} is not allowed; {words}.': 'la hoja: {} no se permite; {words}.',
  'the profile: {} is not allowed; {words}.': 'el perfil: {} no se permite; {words}.',
  '{}: is missing; {words}.': '{}: falta; {words}.',
  '{}: {} is not allowed; {words}.': '{}: {} no se permite; {words}.',
  '{}: {} is not a known key; remove it or correct its spelling.':
    '{}: {} no es una clave conocida; quítela o corríjala.',
  'is not JSON ({}).': 'no es JSON ({}).',
  'cannot be read ({}); give the path of a profile or one of {}.':
    'no se puede leer ({}); dé la ruta de un perfil, o uno de {}.',
  '{}: has to be read or measured before a real first fire.':
    '{}: hay que leerlo o medirlo antes de un primer arranque real.',
  '{}: may stay assumed only where the supervisor accepts it by name.':
    '{}: puede quedar supuesto solo si el supervisor lo acepta por su nombre.',
  'Look at "engine check {}"; a rehearsal is possible as it is.':
    'Mire «engine check {}»; un ensayo es posible tal como está.',
  'is there already; choose another name, or "engine copy {} NAME".':
    'ya existe; elija otro nombre, o «engine copy {} NOMBRE».',
  'is no question; "engine check" and the page of all fields name them.':
    'no es una pregunta; «engine check» y la página de todos los campos las nombran.',
  'cannot be written ({}); choose a place that can be.':
    'no se puede escribir ({}); elija un sitio donde se pueda.',
  'cannot be gone on with ({}); move it away to begin anew.':
    'no se puede seguir con él ({}); muévalo para empezar de nuevo.',
  'expected string': 'hace falta un texto',
  'expected number': 'hace falta un número',
  'expected int': 'hace falta un número entero',
  'expected boolean': 'hace falta true o false',
  'expected object': 'hace falta un objeto',
  'expected array': 'hace falta una lista',
  'expected one of {}': 'hace falta uno de {}',
  'expected {}': 'hace falta {}',
  'too small: expected {words} to be >={}': 'demasiado pequeño: hace falta {words} de {} o más',
  'too small: expected {words} to be >{}': 'demasiado pequeño: hace falta {words} de más de {}',
  'too small: expected {words} to have >={} {words}':
    'demasiado pequeño: hace falta {words} con {} {words} o más',
  'too big: expected {words} to be <={}': 'demasiado grande: hace falta {words} de {} o menos',
  'too big: expected {words} to have <={} {words}':
    'demasiado grande: hace falta {words} con {} {words} o menos',
  string: 'un texto',
  number: 'un número',
  int: 'un número entero',
  array: 'una lista',
  characters: 'letras',
  items: 'elementos',
  'invalid discriminator value. Expected {}': 'hace falta {}',
};
