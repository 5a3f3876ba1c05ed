/** Talk of a workshop, made of halves that fit: what is said near the tool and not to it. */
type Choose = <T>(all: readonly T[]) => T;

const list = (text: string): readonly string[] =>
  text.split('|').map(one => one.trim().replaceAll(/\s+/g, ' '));

const tools = list(`
  torch | wrench | ratchet | spanner | ten millimeter socket | half inch drive | hammer | screwdriver |
  pry bar | torque wrench | rag | drain pan | funnel | grease gun | feeler gauge | jack | creeper |
  multimeter | test lamp | extension lead | gloves | box of bolts | air hose | manual | tape | marker |
  crow bar | pliers | clamp | pump
`);
const parts = list(`
  oil pan | turbo | injector | fuel line | return line | lift pump | water pump | belt tensioner |
  alternator | starter | glow plugs | head gasket | valve cover | rocker arm | cam bearing | crank sensor
  | intake manifold | exhaust manifold | thermostat housing | radiator hose | heater hose | air filter |
  fuel filter | oil filter | drain plug | dipstick | battery cable | ground strap | wiring harness |
  connector | fan shroud | flywheel | clutch | bell housing | engine mount | oil cooler | pushrod | piston
  ring | liner | crankshaft | banjo bolt | hose clamp | pressure sensor | relay | fuse box
`);
const doing = list(`
  check | clean | tighten | loosen | replace | look at | take off | put back | mark | measure | torque |
  bleed | prime | drain | fill | order | lift | hold | test | unplug | wipe down | move | paint |
  photograph | forget
`);
const states = list(`
  loose | tight | cracked | dry | wet | leaking | hot | cold | new | worn | bent | missing | stuck | clean
  | dirty | full of metal | empty | the wrong one | upside down | still in the box | back ordered | out of
  round | in the way | almost done | a bit rough | good enough | not quite right
`);
const people = list(`
  he | she | the boss | the customer | the driver | the new guy | somebody | the parts man | my brother |
  the night shift | we | they | you | i
`);
const when = list(`
  this morning | after lunch | before we go home | on monday | last week | tomorrow | in a minute | when
  it cools down | right after this | next time | yesterday | at the end of the day | any time now | as
  soon as you can
`);
const places = list(`
  on the bench | under the truck | in the drawer | behind the door | by the compressor | in the other bay
  | on the floor | next to the parts washer | over there | in my box | out in the yard | at the front | on
  the left side | up on the rack
`);
const smallTalk = list(`
  did you see the game last night | how was your weekend | it is too cold in here | can you turn the radio
  down | who left the door open | are you hungry | i need a coffee | what time is it | is it break time
  yet | my back hurts today | the coffee machine is broken again | looks like rain | did you get the mail
  | where did everybody go | give me a hand with this | watch your fingers | mind your head | careful with
  that | thank you | thanks a lot | good morning | see you tomorrow | no problem at all | sounds good to
  me | that is what i said | let me think about it | i have no idea | never heard of it | it was like that
  when i got here | call me when you are done | the phone is ringing | somebody is at the door | hand me
  that | not that one, the other one | a little more | a little to the left | easy now | there we go | all
  right then | okay | okay okay | yeah | sure | maybe later | excuse me | what did you say | i said no |
  you bet | never mind | come here | come on | go ahead | look at this | listen to that | hear that noise
  | that is odd | wait a second | hold this | hold that for me | one more turn | that will do
`);

/** One sentence of such talk, without a full stop. */
export function workshopTalk(choose: Choose): string {
  const [tool, part, other] = [choose(tools), choose(parts), choose(parts)];
  return choose([
    () =>
      `${choose(['pass me', 'hand me', 'get me', 'give me', 'bring me', 'find me'])} ${choose(['the', 'that', 'another', 'a'])} ${tool}`,
    () =>
      `${choose(['can you', 'could you', 'will you', 'would you', "don't", 'please', 'we should', 'i have to', "i'm going to", 'did you', "let's", 'you need to'])} ${choose(doing)} the ${part} ${choose(['', choose(when)])}`,
    () => `the ${part} ${choose(['is', 'was', 'looks', 'feels'])} ${choose(states)}`,
    () =>
      `${choose(['where is', "where's", 'who has', 'who took', 'have you seen', 'i put', 'she left', 'you left'])} the ${tool} ${choose(['', choose(places)])}`,
    () =>
      `${choose(people)} ${choose(['said', 'told me', 'thinks', 'thought', 'knew', 'heard'])} the ${part} ${choose(['is', 'was', 'would be'])} ${choose(states)}`,
    () => `the ${tool} is ${choose(places)}`,
    () =>
      `${choose(['i already did', 'we still have to do', 'nobody did', 'they never did', 'somebody should do'])} the ${part} and the ${other}`,
    () =>
      `${choose(['put', 'leave', 'set', 'throw'])} the ${choose([tool, part])} ${choose(places)}, ${choose(smallTalk)}`,
    () => choose(smallTalk),
    () => `${choose(smallTalk)}, ${choose(smallTalk)}`,
    () =>
      `${choose(['if', 'when', 'because', 'unless', 'i think', 'maybe', 'it could be that'])} the ${part} is ${choose(states)}, ${choose(['the', 'check the', 'take off the', 'order a new'])} ${other} ${choose(['', 'too', 'first', 'again'])}`,
    () =>
      `how ${choose(['long', 'tight', 'hot', 'old', 'big', 'loose', 'far', 'bad', 'much'])} is ${choose(['the', 'that', 'your'])} ${part}`,
    () =>
      `there ${choose(['is', 'was', "isn't", 'must be'])} ${choose(['oil', 'water', 'coolant', 'fuel', 'dirt', 'a crack', 'a bolt', 'some play', 'a lot of smoke', 'a funny smell', 'air'])} in the ${part}`,
  ])();
}

/** Sounds like a word for stopping, or has one in it, and stops nothing. */
export const nearStop: readonly string[] = list(`
  top | tops | stock | in stock | out of stock | step | one step | step back | watch your step | stuck |
  it is stuck | still stuck | stopped | it stopped | the rain stopped | it has stopped | who stopped it |
  shop | the shop | in the shop | machine shop | body shop | drop | a drop | one drop | drop it | not a
  drop | stopper | the stopper | end stop | bus stop | the bus stop | truck stop | non stop | a full stop
  | door stop | stop sign | stop light | stop watch | stopping | no stopping | don't stop | do not stop |
  it won't stop | why did it stop | when does it stop | before you stop | it never stops | stops | start |
  start it | start now | start up | restart | start the engine | spot | a wet spot | spot on | stop start
  | top up | top it up | top it off | on top | top dead center | the top hose | tap | tap it | tape |
  staff | stuff | all that stuff | stump | stomp | stand | stand by | stand up | stamp | steep | stoop |
  stab | stub | stud | the stud | studs | star | status | sop | soft | chop | hop | pop | prop | prop
  shaft | crop | mop | cop | swap | swap it | flop | slop | strap | strip | stripped | strop | scoop |
  scope | slope | snap | snap ring | adopt | laptop | desktop | tabletop | nonstop | shortstop |
  christopher | shut the door | shut the window | shut up | shut the hood | shut off valve | shot | shirt
  | shout | should it | shut in | shutter | kill time | kilo | kill switch | the kill switch | killing
  time | skill | skill it | keel | kit | kid | kick it | keep it | fill it | fill the engine | fill it up
  | till it | will it | still it | the engine | emergency exit | emergency brake | emergency | an
  emergency number | urgent | down | shut it | sit down | set it down | put it down | slow down | write it
  down | cool down | shake it down | show it now | now | not now | stay | stay there | stay put | stow it
  | store it | stir it | stopwatch | stopcock | stopgap | backstop | unstoppable | stopover | its top |
  it's hot | this top | last stop | next stop | first stop | pit stop | rest stop | squealing | a squeal |
  the belt is squealing | it squeals | squeaking | squeak | squeeze | the status | same status | thermostat |
  thermostat open | the thermostat is open | the thermostat opened | thermostat closed | smoke | white smoke
  | blue smoke | black smoke | no smoke | a little smoke | smooth | smell | it smells | skip | skip it |
  skip that | skip this step | next step | skid | skin | scrap | scrape | spark | speak | speed | spill |
  spin | split | spray | spring | sprocket | steam | steel | stick | still | stone | straight | strange |
  strong | stretch | suspect | system | east | must | just | first | last | best | post | past | exhaust |
  the last step | is it up | is top | gas top | just a top | that's tough
`);

/** One of our wordings or numbers inside of talk. */
export function aroundOurWords(choose: Choose, ours: string): string {
  return choose([
    () =>
      `${choose(['i think', 'i guess', 'she said', 'he said', 'okay', 'well', 'yeah', 'so', 'right', 'um, yes', 'let me see', 'i would say', 'it says', 'now it is', 'it reads', 'i get', 'i have', 'looks like', 'it shows', 'that makes'])} ${ours}`,
    () =>
      `${ours} ${choose(['i think', 'now', 'here', 'again', 'for me', 'at the moment', 'so far', 'as far as i can see', 'over here', 'on this side', 'i would say', 'okay', 'right'])}`,
    () =>
      `${choose(['what do you mean', 'did you say', 'you mean', 'is it', 'was it', 'not', 'why', 'who said', 'do not say', 'it is not'])} ${ours}`,
    () => `${ours}, ${workshopTalk(choose)}`,
    () => `${workshopTalk(choose)}, ${ours}`,
    () => `${choose(['computer', 'listen', 'hello', 'hey', 'second'])}, ${ours}`,
  ])();
}
