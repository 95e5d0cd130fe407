/** How a report looks: one serif face, hairlines, ink on paper. What is bad is a word with a bar, never a colour alone. */

/** The rules for a fragment; a page has the same. @internal */
export const style = `
.kerbwatt{
--paper:light-dark(#fffefa,#15140f);--ink:light-dark(#1d1b16,#ece7da);--quiet:light-dark(#5d574b,#b3ab99);
--hair:light-dark(#d8d2c4,#3b382f);--mark:light-dark(#7b3f00,#e2b06a);
color-scheme:light dark;background:var(--paper);color:var(--ink);
font:1.0625rem/1.5 "Iowan Old Style","Palatino Nova","Palatino Linotype",Palatino,"Book Antiqua","Source Serif 4",Gelasio,"Liberation Serif","Times New Roman",serif;
font-variant-numeric:lining-nums;text-wrap:pretty}
.kerbwatt *{box-sizing:border-box}
.kerbwatt :is(h1,h2,h3,p,ul,ol,dl,dd,figure){margin:0;padding:0}
.kerbwatt :is(h1,h2,h3){font-weight:600;line-height:1.2;text-wrap:balance}
.kerbwatt h1{font-size:2.1rem;font-weight:500;letter-spacing:-.01em}
.kerbwatt h2{font-size:1.4rem;font-weight:500;margin:3.2rem 0 1rem;padding-top:.7rem;border-top:1px solid var(--ink)}
.kerbwatt :is(h3,.minor){border:0;font-size:1.0625rem;font-style:italic;font-weight:500;margin:2rem 0 .4rem;padding:0}
.kerbwatt a{color:inherit;text-decoration-line:underline;text-decoration-color:var(--quiet);text-decoration-thickness:1px;text-underline-offset:.18em}
.kerbwatt a:hover{text-decoration-color:currentColor}
.kerbwatt :focus-visible{outline:2px solid var(--mark);outline-offset:2px}
.kerbwatt .note,.kerbwatt figcaption,.kerbwatt .basis,.kerbwatt .quiet{color:var(--quiet)}
.kerbwatt .no{color:var(--quiet);font-variant-numeric:lining-nums tabular-nums}
.kerbwatt h2 .no{margin-right:.6em}
.kerbwatt ul{list-style:none}
.kerbwatt summary{cursor:pointer;list-style:none}
.kerbwatt summary::-webkit-details-marker{display:none}
.kerbwatt summary::after{content:"\\2002+";color:var(--quiet)}
.kerbwatt details[open]>summary::after{content:"\\2002−"}
.kerbwatt summary.row::after{text-align:right;white-space:nowrap}
.kerbwatt :is(.figures,.checks)>li{border-top:1px solid var(--hair)}
.kerbwatt :is(.figures,.checks)>li:last-child{border-bottom:1px solid var(--hair)}
.kerbwatt :is(.figures,.checks){margin:1rem 0}
.kerbwatt .row{display:grid;column-gap:.9rem;padding:.3rem 0;align-items:baseline}
.kerbwatt .figures .row{grid-template-columns:2.6rem 1fr auto 1rem}
.kerbwatt .checks{font-size:.97rem}
.kerbwatt .figures{max-width:36rem}
.kerbwatt .checks .row{grid-template-columns:2.2rem 4.9rem 1fr 5.6rem 8.2rem 5.2rem .8rem}
.kerbwatt .row :is(.value,.told){font-variant-numeric:lining-nums tabular-nums;text-align:right}
.kerbwatt .row .limit{color:var(--quiet)}
.kerbwatt .row .wide{grid-column:4/7;text-align:left}
.kerbwatt .verdict{padding-left:.5rem;border-left:0 solid transparent}
.kerbwatt .pass{padding-left:.5rem;color:var(--quiet)}
.kerbwatt .near{border-left:3px dotted currentColor;font-style:italic}
.kerbwatt .unknown{border-left:3px solid currentColor;font-style:italic}
.kerbwatt .fail{border-left:6px double currentColor;font-weight:700}
.kerbwatt .inner{margin:.1rem 0 .9rem 3.1rem;font-size:.94rem}
.kerbwatt .inner>p{margin:.15rem 0}
.kerbwatt table{border-collapse:collapse;font-variant-numeric:lining-nums tabular-nums;min-width:min(100%,26rem);font-size:.97rem}
.kerbwatt caption{text-align:left;padding:0 0 .45rem;caption-side:top;text-wrap:pretty}
.kerbwatt :is(th,td){padding:.28rem 0 .28rem 1.7rem;text-align:right;vertical-align:baseline;font-weight:400;border-bottom:1px solid var(--hair)}
.kerbwatt :is(th,td):first-child{padding-left:0;text-align:left}
.kerbwatt td.word{text-align:left;text-wrap:balance}
.kerbwatt thead :is(th,td){color:var(--quiet);font-style:italic;border-bottom:1px solid var(--ink);vertical-align:bottom;line-height:1.25}
.kerbwatt thead th.word{text-align:left}
.kerbwatt :is(figcaption,.under,.note){max-width:42rem;overflow-wrap:anywhere}
.kerbwatt .scroll{overflow-x:auto;margin:1.6rem 0 .6rem}
.kerbwatt .under{color:var(--quiet);font-size:.94rem;margin:.3rem 0}
.kerbwatt td a{text-decoration-style:dotted}
.kerbwatt figure{margin:1.8rem 0;break-inside:avoid}
.kerbwatt .pictures{display:grid;grid-template-columns:repeat(auto-fit,minmax(min(100%,19rem),1fr));gap:1.4rem;margin:.8rem 0}
.kerbwatt svg{display:block;width:100%;height:auto;font:11px "Iowan Old Style","Palatino Nova","Palatino Linotype",Palatino,"Book Antiqua","Source Serif 4",Gelasio,"Liberation Serif","Times New Roman",serif;font-variant-numeric:lining-nums tabular-nums}
.kerbwatt svg text{fill:var(--ink)}
.kerbwatt svg .quiet{fill:var(--quiet);font-style:italic}
.kerbwatt svg .name{paint-order:stroke;stroke:var(--paper);stroke-width:3px;stroke-linejoin:round}
.kerbwatt svg path{fill:none;stroke:var(--ink);stroke-width:1}
.kerbwatt svg .grid{stroke:var(--hair)}
.kerbwatt svg .axis{stroke:var(--quiet)}
.kerbwatt svg .line{stroke-width:1.7;stroke-linejoin:round}
.kerbwatt svg .beside{stroke:var(--mark);stroke-width:1.2}
.kerbwatt svg .band{stroke:none;fill:var(--hair);fill-opacity:.6}
.kerbwatt svg .d1{stroke-dasharray:7 3}
.kerbwatt svg .d2{stroke-dasharray:2 2.5}
.kerbwatt svg .d3{stroke-dasharray:9 3 2 3}
.kerbwatt svg .d4{stroke-dasharray:14 4}
.kerbwatt svg .d5{stroke-dasharray:4 2 1 2 1 2}
.kerbwatt svg .centre{stroke:var(--hair);stroke-dasharray:10 3 2 3}
.kerbwatt svg .leader{stroke:var(--quiet);stroke-width:.7}
.kerbwatt svg .bar{stroke-width:2}
.kerbwatt svg .wheel{fill:var(--ink)}
.kerbwatt svg .full{fill:var(--mark);stroke:var(--mark)}
.kerbwatt svg .hollow{fill:var(--paper);stroke:var(--ink)}
.kerbwatt svg .cross{stroke:var(--quiet);stroke-width:1.2}
.kerbwatt svg .lens{fill:var(--paper);stroke:var(--quiet)}
.kerbwatt svg .on{fill:var(--paper)}
.kerbwatt math{font-family:"STIX Two Math","Latin Modern Math","Cambria Math",math;font-size:1.06em;display:inline math;math-style:normal}
.kerbwatt mtd{text-align:left;padding:.1em .2em .1em 0}
.kerbwatt .formula{overflow-x:auto;overflow-y:hidden;padding:.25rem 0}
.kerbwatt code,.kerbwatt pre{font:.86em/1.45 ui-monospace,"DejaVu Sans Mono",Menlo,Consolas,monospace}
.kerbwatt pre{margin:1rem 0;white-space:pre-wrap;overflow-wrap:anywhere;tab-size:2}
.kerbwatt .step{border-left:1px solid var(--hair);padding-left:.9rem;margin:.4rem 0}
.kerbwatt .step[id]::before{content:attr(id) "\\2002";color:var(--quiet);font-variant-numeric:lining-nums tabular-nums}
.kerbwatt .step[id]>p:first-child{display:inline}
.kerbwatt .step p{overflow-wrap:anywhere}
.kerbwatt .step ul{margin:.2rem 0}
.kerbwatt .step li{margin:.1rem 0}
.kerbwatt .numbers{overflow-wrap:anywhere}
`

/** What a page has besides. @internal */
export const pageStyle = `
html{color-scheme:light dark;-webkit-text-size-adjust:100%;text-size-adjust:100%}
body.kerbwatt{margin:0;padding:clamp(1.2rem,4vw,3.2rem) clamp(1rem,4vw,3rem) 5rem}
.page{max-width:48rem;margin:0 auto}
.page>header .note{margin:.5rem 0 1.6rem;max-width:38rem}
.page .came{font-size:1.3rem;padding:.1rem 0 .1rem .9rem;margin:0 0 1rem}
.page .came.pass{padding-left:0;color:inherit}
.page .lines{display:grid;grid-template-columns:max-content 1fr}
.page .lines dt{color:var(--quiet);font-style:italic;padding-right:1.6rem!important}
.page .lines :is(dt,dd){border-top:1px solid var(--hair);padding:.25rem 0}
.page .lines dt:empty{border-color:transparent}
.page nav ol{list-style:none;columns:2;column-gap:2.4rem;margin:0}
.page nav{margin:2.4rem 0 0}
.page nav li{break-inside:avoid;padding:.12rem 0}
.page nav a{text-decoration:none}
.page nav a:hover{text-decoration:underline}
.page nav .no{display:inline-block;min-width:2rem}
.page .cautions{max-width:42rem}
.page .cautions li{padding:.5rem 0;border-top:1px solid var(--hair);break-inside:avoid}
.page .taken{columns:2;column-gap:2.4rem;font-size:.92rem;line-height:1.4;list-style:none}
.page .taken li{break-inside:avoid;padding:.12rem 0 .12rem 2.2rem;text-indent:-2.2rem}
.page .taken .no{display:inline-block;width:2.2rem;text-indent:0}
.page .sheet{columns:2;column-gap:2.4rem;font-size:.74rem}
.page .plain li{padding:.2rem 0}
.page .formulas>li{border-top:1px solid var(--hair);padding:.5rem 0;break-inside:avoid;display:flex;flex-wrap:wrap;column-gap:2rem}
.page .formulas .formula{flex:0 1 auto;min-width:34%}
.page .formulas .about{flex:1 1 20rem}
.page footer{margin-top:3rem;padding-top:.7rem;border-top:1px solid var(--ink);color:var(--quiet);font-size:.92rem;overflow-wrap:anywhere}
@media (max-width:44rem){
body.kerbwatt{font-size:1rem}
.page h1{font-size:1.6rem}
.page h2:not(.minor){font-size:1.25rem}
.page .lines{grid-template-columns:1fr}
.page .lines dd{border-top:0;padding-top:0}
.page .lines dt{padding-bottom:0}
.page .lines dt:empty{display:none}
.page nav ol,.page .taken,.page .sheet{columns:1}
.page .figures .row{grid-template-columns:2.3rem 1fr auto .8rem;column-gap:.6rem}
.page .checks .row{grid-template-columns:2.3rem 1fr auto .8rem;column-gap:.6rem}
.page .checks .row>.no{grid-area:1/1}
.page .checks .row>.name{grid-area:1/2}
.page .checks .row>.verdict{grid-area:1/3}
.page .checks .row::after{grid-area:1/4}
.page .checks .row>.told{text-align:left}
.page .checks .row>.figure{grid-area:2/2/3/5}
.page .checks .row>.limit{grid-area:3/2/4/5}
.page .checks .row>.left{display:none}
.page .checks .row>.wide{grid-area:2/2/3/5}
.page .inner{margin-left:2.9rem}
.page .scroll{margin-right:-1rem;padding-right:1rem}
.page :is(th,td){padding-left:.8rem}
}
@media print{
:root,body.kerbwatt{color-scheme:light}
html{font-size:9.4pt}
body.kerbwatt{padding:0;font-size:1rem;line-height:1.38;background:none}
.page{max-width:none}
.page h1{font-size:20pt}
.page h2:not(.minor){font-size:13.5pt;margin:18pt 0 6pt;break-after:avoid}
.page :is(h3,.minor){font-size:10pt;break-after:avoid;margin:10pt 0 3pt}
.page .came{font-size:13pt;margin-bottom:6pt}
.page>header .note{margin:4pt 0 10pt}
.page nav{margin-top:12pt}
.page thead{display:table-header-group}
.page :is(tr,.row,figure,.step){break-inside:avoid}
.page caption,.page figcaption{break-after:avoid}
.page .scroll{overflow:visible;break-inside:avoid}
.page details.under:not(.told),.page details.under.told>summary{display:none}
.page details.told::details-content,.page details.told details::details-content{content-visibility:visible;display:block;height:auto}
.page summary::after{content:none}
.page a{text-decoration:none}
.page .pictures{grid-template-columns:repeat(auto-fit,minmax(70mm,1fr))}
.page .sheet{columns:2;font-size:6.2pt}
.page figure svg{max-height:62mm;width:auto;max-width:100%!important}
.page figure{margin:10pt 0}
.page .formula{overflow:visible}
.page .checks .row{grid-template-columns:8mm 17mm 1fr 21mm 29mm 20mm 0}
.page .figures .row{grid-template-columns:10mm 1fr auto 0}
.page .inner{margin-left:12mm}
}
`

/** The foot of each printed page, from texts that are strings of CSS. @internal */
export function pageFoot(title: string, told: string): string {
  const own =
    'font:8pt "Iowan Old Style","Palatino Linotype",Palatino,"Liberation Serif","Times New Roman",serif;color:#555;vertical-align:top;padding-top:3mm'
  return `
@page{size:A4;margin:17mm 18mm 20mm;
@bottom-left{content:${title};${own}}
@bottom-center{content:${told};${own}}
@bottom-right{content:"page " counter(page) " of " counter(pages);${own}}}
`
}
