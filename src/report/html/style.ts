/** The inks of drawings, light and dark; on paper always the light ones. */
const light = `--paper:#fff;--ink:#1a1f24;--muted:#5a6570;--rule:#d5dae0;--soft:#f3f5f7;--good:#0b6b3a;--bad:#b3150f;--warn:#8a5200;--good-soft:#e6f4ec;--bad-soft:#fdeae8;--warn-soft:#fdf2dd;--reading:#12539b;--beyond:#b3150f;--band-a:#f1f3f6;--band-b:#e6eaef;--phase:#5b7fa6;--engine:#3c8a4f;--crank:#c98a1b;--held:#8a6fb0`;
const dark = `--paper:#14181c;--ink:#e6eaee;--muted:#9aa6b2;--rule:#36404a;--soft:#1d242b;--good:#5fd08d;--bad:#ff8a80;--warn:#f0b756;--good-soft:#12301f;--bad-soft:#3b1613;--warn-soft:#33270f;--reading:#7db8ff;--beyond:#ff8a80;--band-a:#1b2128;--band-b:#232b33;--phase:#6f97c2;--engine:#58b36e;--crank:#e0a437;--held:#ab90d4`;

const inkRules = `.f-axis{fill:var(--ink)}.f-label{fill:var(--muted)}.f-reading{fill:var(--reading)}.f-bad,.f-stop{fill:var(--bad)}
.f-limit{fill:var(--bad)}.f-beyond{fill:var(--beyond);opacity:.13}.f-bandA{fill:var(--band-a)}.f-bandB{fill:var(--band-b)}
.f-phase{fill:var(--phase)}.f-engine{fill:var(--engine)}.f-crank{fill:var(--crank)}.f-held{fill:var(--held)}
.f-drill{fill:var(--paper);stroke:var(--bad);stroke-width:.7}
polyline{fill:none}.s-axis{stroke:var(--ink)}.s-grid{stroke:var(--rule)}.s-reading{stroke:var(--reading)}.s-limit{stroke:var(--bad)}`;

/** What a drawing outside the page needs. */
export const drawingStyle = `svg{${light};font-family:system-ui,"DejaVu Sans",sans-serif}${inkRules}`;

/** No font, picture or script from anywhere: what the reader's machine has is good enough. */
export const style = `
:root{color-scheme:light dark;${light}}
@media screen and (prefers-color-scheme:dark){:root{${dark}}}
*{box-sizing:border-box}
html{font-size:15px;background:var(--paper)}
body{margin:0 auto;max-width:70rem;padding:1.2rem;color:var(--ink);font:1rem/1.42 system-ui,"Segoe UI","Noto Sans","DejaVu Sans",sans-serif}
.banner{border:1px solid;border-left-width:.5rem;border-radius:.3rem;padding:.5rem .8rem;margin:0 0 1rem;overflow-wrap:anywhere}
.banner.bad{font-size:1.25rem;font-weight:700;border-color:var(--bad);color:var(--bad);background:var(--bad-soft)}
.banner.bad p{font-size:1rem;font-weight:400;margin:.3rem 0 0}
.banner.good{border-color:var(--good);color:var(--good);background:var(--good-soft)}
.banner.warn{border-color:var(--warn);color:var(--warn);background:var(--warn-soft)}
h1{font-size:1.6rem;margin:.2rem 0;display:flex;flex-wrap:wrap;justify-content:space-between;align-items:baseline;gap:.3rem 1rem}
h1 small{font-size:.95rem;font-weight:400;color:var(--muted)}
h2{font-size:1.1rem;margin:1.5rem 0 .3rem;border-bottom:2px solid var(--rule);padding-bottom:.15rem;break-after:avoid}
.note{color:var(--muted);font-size:.87rem;margin:.1rem 0 .5rem;break-after:avoid}
.lead{font-size:1.2rem;font-weight:600;margin:.3rem 0 .8rem}
.good{color:var(--good)}.bad{color:var(--bad)}.warn{color:var(--warn)}.muted{color:var(--muted)}
p{margin:.3rem 0;overflow-wrap:anywhere}
dl{display:grid;grid-template-columns:repeat(auto-fill,minmax(14rem,1fr));gap:.35rem 1.2rem;margin:.6rem 0}
dl div{border-left:3px solid var(--rule);padding-left:.6rem;min-width:0;break-inside:avoid}
dt{color:var(--muted);font-size:.8rem}
dd{margin:0;overflow-wrap:anywhere}
.scroll{overflow-x:auto}
table{border-collapse:collapse;width:100%;table-layout:fixed;font-size:.87rem;min-width:40rem}
th{text-align:left;color:var(--muted);font-weight:600;border-bottom:1px solid var(--ink);padding:.25rem .45rem}
td{border-bottom:1px solid var(--rule);padding:.22rem .45rem;vertical-align:top;overflow-wrap:anywhere}
tr{break-inside:avoid}
.r{text-align:right;font-variant-numeric:tabular-nums}
td small{display:block;color:var(--muted);font-size:.92em}
tr.group td{background:var(--soft);border-bottom:1px solid var(--rule);padding:.35rem .45rem;break-after:avoid}
.head{display:flex;flex-wrap:wrap;justify-content:space-between;gap:0 1rem}
@media (max-width:44rem){.head,.head span{display:block}}
details{margin:.3rem 0}summary{cursor:pointer;overflow-wrap:anywhere}
ul{margin:.3rem 0;padding-left:1.2rem}
li{overflow-wrap:anywhere;margin:.12rem 0}
ul.boxes{list-style:none;padding-left:.2rem}
ul.boxes li::before{content:"";display:inline-block;width:.8em;height:.8em;border:1px solid var(--ink);margin-right:.6em;vertical-align:-.06em;text-align:center;font-size:1em;line-height:.8em}
ul.boxes li.ticked::before{content:"\\2713"}
.figures{display:grid;grid-template-columns:1fr;gap:.6rem 1.2rem}
@media (min-width:44rem){.figures.two{grid-template-columns:1fr 1fr}}
figure{margin:0;break-inside:avoid;min-width:0}
@media screen{.figures:not(.two) figure{overflow-x:auto}.figures:not(.two) svg{min-width:38rem}}
figcaption{font-weight:600;font-size:.87rem}
svg{display:block;width:100%;height:auto;font-family:inherit}
.sign{display:grid;grid-template-columns:repeat(auto-fit,minmax(14rem,1fr));gap:1rem 2rem;margin-top:.5rem}
.sign div{break-inside:avoid;min-width:0;overflow-wrap:anywhere}
.sign .line{border-bottom:1px solid var(--ink);height:3rem}
.hash{margin-top:1.5rem;border-top:1px solid var(--rule);padding-top:.5rem;font-size:.85rem;color:var(--muted)}
.hash code{display:block;font:.95rem/1.4 ui-monospace,"DejaVu Sans Mono",monospace;overflow-wrap:anywhere;color:var(--ink)}
${inkRules}
@page{margin:14mm}
@media print{html{font-size:10.5px}body{max-width:none;padding:0}.banner,tr.group td{print-color-adjust:exact;-webkit-print-color-adjust:exact}.scroll{overflow:visible}table{min-width:0}.figures.two{grid-template-columns:1fr 1fr}thead{display:table-header-group}}
`;
