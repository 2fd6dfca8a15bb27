import {chromium} from 'playwright-core';
const b=await chromium.launch({executablePath:'/usr/bin/chromium',args:['--no-sandbox','--disable-gpu','--disable-quic','--no-first-run','--disable-background-networking','--disable-component-update','--disable-sync']});
const out='/tmp/shots';
const run=async(w,h,scheme)=>{
  const p=await b.newPage({viewport:{width:w,height:h},colorScheme:scheme});
  p.on('console',m=>console.log(m.text())); p.on('pageerror',e=>console.log('ERR',e.message));
  await p.goto('http://127.0.0.1:7300/#s=loose-and-restless&seed=5'); await p.waitForTimeout(9000); await p.screenshot({path:`${out}/loose-${w}.png`,fullPage:true});
  const tag=`${w}`;
  console.log(await p.evaluate(()=>[...document.querySelectorAll('button,select,input')].map(e=>e.tagName+':'+(e.id||e.name||e.textContent.trim().slice(0,30))+'|'+(e.getAttribute('aria-label')||'')).join('\n')));
  await p.close();
};
await run(1280,900,'light');
await b.close();
