import { familyBoat } from './family.ts';
import { floatByCode } from './figures.ts';
import { floatPlainly } from './plainFloater.ts';
import { seeded } from '../helpers/seeded.ts';
import { drawTruth } from './truth.ts';
import { workByTheBook } from './work.ts';
let at=performance.now();
for (let seed=1; seed<=20; seed++){
  const b = familyBoat(seed);
  const t1=performance.now();
  const random=seeded(seed+77);
  const truth=drawTruth(b,random);
  const s=workByTheBook(b,truth,{floater: seed%2?floatByCode:floatPlainly, random, weighs:false, mostTries:6});
  const t2=performance.now();
  console.log(seed,b.plan.layout,b.plan.care,b.plan.isTouchy?'touchy':'',b.plan.length,b.mass.toFixed(0),truth.hidden.map(h=>h.words).join(' + '),'→',s.inTrimAt,'family',(t1-at).toFixed(0),'work',(t2-t1).toFixed(0));
  for (const t of s.tries) console.log('   ',t.misses.filter(m=>Math.abs(m.by)>1).map(m=>m.figure+' '+m.by.toFixed(1)).join(' ')||'in trim', t.madeWorse?'WORSE':'', '|', t.lesson?.slice(0,90)??'-','|',t.correction?.slice(0,90)??'-');
  at=t2;
}
