/**
 * How each word that may be said is pronounced, in the phones of the CMU Pronouncing Dictionary: from that dictionary
 * (see NOTICE), and from `english-additions.ts`. Written by `npm run pronunciations`: not to be changed by hand.
 */
const lines = `
a: AH | EY
accepted: AE K S EH P T IH D | AH K S EH P T IH D
accepts: AE K S EH P T S
affirmative: AH F ER M AH T IH V
again: AH G EH N | AH G EY N
air: EH R
alarm: AH L AA R M
all: AO L
already: AO L R EH D IY | AO R EH D IY
altitude: AE L T AH T UW D
am: AE M | EY EH M
an: AE N | AH N
and: AH N D | AE N D
another: AH N AH DH ER
are: AA R | ER
as: AE Z | EH Z
at: AE T
away: AH W EY
back: B AE K
bad: B AE D
bar: B AA R
battery: B AE T ER IY
before: B IH F AO R | B IY F AO R
belt: B EH L T
belts: B EH L T S
binds: B AY N D Z
biodiesel: B AY OW D IY Z AH L | B AY OW D IY S AH L
bit: B IH T
black: B L AE K
block: B L AA K
blue: B L UW
bolt: B OW L T
boost: B UW S T
boots: B UW T S
both: B OW TH
bottom: B AA T AH M
brake: B R EY K
breaker: B R EY K ER
broken: B R OW K AH N
bubbles: B AH B AH L Z
by: B AY
calm: K AA M | K AA L M
can: K AE N | K AH N
cap: K AE P
card: K AA R D
carry: K AE R IY | K EH R IY
cause: K AA Z | K AO Z
celsius: S EH L S IY AH S
charging: CH AA R JH IH NG
clamp: K L AE M P
clear: K L IH R
cleared: K L IH R D
click: K L IH K
closed: K L OW Z D
code: K OW D
codes: K OW D Z
cold: K OW L D
coldest: K OW L D AH S T
connected: K AH N EH K T IH D
continue: K AH N T IH N Y UW
cool: K UW L
coolant: K UW L AH N T
correct: K ER EH K T | K AH R EH K T | K AO R EH K T | K R EH K T
coupling: K AH P L IH NG
cracked: K R AE K T
crank: K R AE NG K
cut: K AH T
cylinder: S IH L AH N D ER | S IH L IH N D ER
damp: D AE M P
dark: D AA R K
dead: D EH D
decimal: D EH S AH M AH L
degrees: D IH G R IY Z
dirty: D ER T IY
disabled: D IH S EY B AH L D
done: D AH N
down: D AW N
drain: D R EY N
drill: D R IH L
drip: D R IH P
drips: D R IH P S
drop: D R AA P | D R AO P
dropped: D R AA P T
dry: D R AY
eight: EY T
eighteen: EY T IY N
eighty: EY T IY
eleven: IH L EH V AH N | IY L EH V AH N
else: EH L S
emergency: IH M ER JH AH N S IY | IY M ER JH AH N S IY
empty: EH M P T IY | EH M T IY
end: EH N D
engine: EH N JH AH N | IH N JH AH N
everything: EH V R IY TH IH NG
exhaust: IH G Z AO S T
extinguisher: IH K S T IH NG G W IH SH ER
extraction: EH K S T R AE K SH AH N
fahrenheit: F EH R AH N HH AY T
failure: F EY L Y ER
false: F AO L S
fan: F AE N
fast: F AE S T
fasteners: F AE S AH N ER Z | F AE S N ER Z
fault: F AO L T
feet: F IY T
fifteen: F IH F T IY N
fifty: F IH F T IY
filled: F IH L D
filter: F IH L T ER
filters: F IH L T ER Z
fine: F AY N
fire: F AY ER | F AY R
fired: F AY ER D
firm: F ER M
first: F ER S T
fitted: F IH T AH D | F IH T IH D
fitting: F IH T IH NG
five: F AY V
flat: F L AE T
flow: F L OW
flowing: F L OW IH NG
flows: F L OW Z
fluid: F L UW AH D | F L UW IH D
foam: F OW M
for: F AO R | F ER | F R ER
forty: F AO R T IY
four: F AO R
fourteen: F AO R T IY N
freely: F R IY L IY
freeze: F R IY Z
fuel: F Y UW AH L | F Y UW L
fuelling: F Y UW L IH NG
full: F UH L
fumes: F Y UW M Z
galleries: G AE L ER IY Z
gallon: G AE L AH N
gallons: G AE L AH N Z
gap: G AE P
gasket: G AE S K AH T
gauge: G EY JH
give: G IH V
glow: G L OW
go: G OW
good: G UH D | G IH D
grade: G R EY D
hammer: HH AE M ER
handed: HH AE N D AH D | HH AE N D IH D
has: HH AE Z | HH AH Z
have: HH AE V
hear: HH IY R
heater: HH IY T ER
heavy: HH EH V IY
help: HH EH L P
here: HH IY R
high: HH AY
hiss: HH IH S
hold: HH OW L D
home: HH OW M
hose: HH OW Z
hoses: HH OW Z IH Z
hot: HH AA T
how: HH AW
hundred: HH AH N D R AH D | HH AH N D R IH D | HH AH N ER D | HH AH N D ER D
hunting: HH AH N T IH NG
hurt: HH ER T
i: AY
idle: AY D AH L
in: IH N
injury: IH N JH ER IY
intake: IH N T EY K
is: IH Z
isolated: AY S AH L EY T AH D | AY S AH L EY T IH D
it: IH T
item: AY T AH M
items: AY T AH M Z
jacket: JH AE K AH T | JH AE K IH T
keeps: K IY P S
key: K IY
kill: K IH L
kilopascals: K IH L OW P AE S K AE L Z | K IH L AH P AE S K AH L Z
kit: K IH T
knock: N AA K
knocking: N AA K IH NG
knocks: N AA K S
lamp: L AE M P
lamps: L AE M P S
last: L AE S T | L AE S
leak: L IY K
leave: L IY V
left: L EH F T
level: L EH V AH L
levels: L EH V AH L Z
lever: L EH V ER | L IY V ER
lights: L AY T S
line: L AY N
lit: L IH T
liter: L IY T ER
liters: L IY T ER Z
little: L IH T AH L
loaded: L OW D IH D
locked: L AA K T
long: L AO NG
looking: L UH K IH NG
loose: L UW S
low: L OW
lowest: L OW AH S T
m: EH M
manifold: M AE N AH F OW L D | M AE N IH F OW L D
manual: M AE N Y UW AH L
marked: M AA R K T
measured: M EH ZH ER D
meters: M IY T ER Z
minus: M AY N AH S
missing: M IH S IH NG
mix: M IH K S
mixed: M IH K S T
mode: M OW D
moment: M OW M AH N T
more: M AO R
moving: M UW V IH NG
much: M AH CH
named: N EY M D
near: N IH R
negative: N EH G AH T IH V
neutral: N UW T R AH L
next: N EH K S T | N EH K S
night: N AY T
nine: N AY N
niner: N AY N ER
nineteen: N AY N T IY N
ninety: N AY N T IY
no: N OW
nobody: N OW B AA D IY | N OW B AH D IY
noise: N OY Z
noisy: N OY Z IY
normal: N AO R M AH L
not: N AA T
noted: N OW T AH D | N OW T IH D
nothing: N AH TH IH NG
now: N AW
number: N AH M B ER
of: AH V
off: AO F
oh: OW
oil: OY L
oiled: OY L D
okay: OW K EY
on: AA N | AO N
one: W AH N
ones: W AH N Z
only: OW N L IY
open: OW P AH N
or: AO R | ER
order: AO R D ER
out: AW T
over: OW V ER
overheating: OW V ER HH IY T IH NG
overspeed: OW V ER S P IY D
p: P IY
pan: P AE N
pass: P AE S
percent: P ER S EH N T
pipe: P AY P
plug: P L AH G
plugged: P L AH G D
point: P OY N T
port: P AO R T
pounds: P AW N D Z | P AW N Z
power: P AW ER
pressure: P R EH SH ER
primed: P R AY M D
primer: P R AY M ER
problem: P R AA B L AH M
protection: P R AH T EH K SH AH N
proved: P R UW V D
pulled: P UH L D
pump: P AH M P
pumped: P AH M P T
pushed: P UH SH T
quart: K W AO R T
quarts: K W AO R T S
quick: K W IH K
quiet: K W AY AH T
r: AA R
radiator: R EY D IY EY T ER
rail: R EY L
ran: R AE N
rattle: R AE T AH L
read: R EH D | R IY D
ready: R EH D IY
red: R EH D
regeneration: R IY JH EH N ER EY SH AH N
repeat: R IH P IY T | R IY P IY T
restored: R IH S T AO R D
return: R IH T ER N | R IY T ER N
revs: R EH V Z
right: R AY T
risen: R IH Z AH N
rising: R AY Z IH NG
rough: R AH F
rubbing: R AH B IH NG
running: R AH N IH NG
runs: R AH N Z
s: EH S
safe: S EY F
same: S EY M
say: S EY
says: S EH Z | S IH Z
screwed: S K R UW D
seal: S IY L
sealed: S IY L D
sealing: S IY L IH NG
seat: S IY T
second: S EH K AH N D
seconds: S EH K AH N D Z
secure: S IH K Y UH R
secured: S IH K Y UH R D
sensors: S EH N S ER Z
session: S EH SH AH N
set: S EH T
seven: S EH V AH N
seventeen: S EH V AH N T IY N
seventy: S EH V AH N T IY | S EH V AH N IY
shaft: SH AE F T
shaking: SH EY K IH NG
shop: SH AA P
shows: SH OW Z
shut: SH AH T
side: S AY D
sign: S AY N
signed: S AY N D
six: S IH K S
sixteen: S IH K S T IY N
sixty: S IH K S T IY
skip: S K IH P
slow: S L OW
smell: S M EH L
smoke: S M OW K
smoking: S M OW K IH NG
smooth: S M UW DH
so: S OW
some: S AH M
someone: S AH M W AH N
something: S AH M TH IH NG
sound: S AW N D
speed: S P IY D
spin: S P IH N
spot: S P AA T
spraying: S P R EY IH NG
sprays: S P R EY Z
squealing: S K W IY L IH NG
squeals: S K W IY L Z
stand: S T AE N D
start: S T AA R T
started: S T AA R T IH D
starter: S T AA R T ER
status: S T AE T AH S | S T EY T AH S
stays: S T EY Z
steady: S T EH D IY
steam: S T IY M
steering: S T IH R IH NG
step: S T EH P
still: S T IH L
stock: S T AA K
stop: S T AA P | S T AO P
straight: S T R EY T
strange: S T R EY N JH
strokes: S T R OW K S
stuck: S T AH K
supervisor: S UW P ER V AY Z ER
supervisor's: S UW P ER V AY Z ER Z
sure: SH UH R
switch: S W IH CH
tank: T AE NG K
temperature: T EH M P R AH CH ER | T EH M P ER AH CH ER
ten: T EH N
tester: T EH S T ER
that: DH AE T | DH AH T
the: DH AH | DH IY
there: DH EH R
thermostat: TH ER M AH S T AE T
thick: TH IH K
third: TH ER D
thirteen: TH ER T IY N
thirty: TH ER D IY | TH ER T IY
this: DH IH S
thousand: TH AW Z AH N D | TH AW Z AH N
three: TH R IY
throttle: TH R AA T AH L
tight: T AY T
time: T AY M
to: T UW | T IH | T AH
today: T AH D EY | T UW D EY
too: T UW
tools: T UW L Z
top: T AA P | T AO P
torque: T AO R K
torqued: T AO R K T
turbo: T ER B OW
turning: T ER N IH NG
turns: T ER N Z
twelve: T W EH L V
twenty: T W EH N T IY | T W EH N IY
two: T UW
under: AH N D ER
understand: AH N D ER S T AE N D
understood: AH N D ER S T UH D
up: AH P
upper: AH P ER
valve: V AE L V
vehicle: V IY HH IH K AH L | V IY IH K AH L
vent: V EH N T
vibration: V AY B R EY SH AH N
voltage: V OW L T AH JH | V OW L T IH JH
volts: V OW L T S
wait: W EY T
warm: W AO R M
warming: W AO R M IH NG
was: W AA Z | W AH Z
washer: W AA SH ER
water: W AO T ER
we: W IY
weep: W IY P
weeps: W IY P S
wet: W EH T
what: W AH T | HH W AH T
where: W EH R | HH W EH R
white: W AY T | HH W AY T
wiring: W AY R IH NG
without: W IH TH AW T | W IH DH AW T
would: W UH D
wrong: R AO NG
yes: Y EH S
yet: Y EH T
zero: Z IH R OW | Z IY R OW
`;

const pronunciations: ReadonlyMap<string, readonly string[]> = new Map(
  lines
    .trim()
    .split('\n')
    .map(line => line.split(': '))
    .map(([word = '', phones = '']) => [word, phones.split(' | ')]),
);

/** All pronunciations of an English word that may be said; none for any other. */
export const pronounceEnglish = (word: string): readonly string[] => pronunciations.get(word) ?? [];
