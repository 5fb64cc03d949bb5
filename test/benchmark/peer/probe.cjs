// Goes before a server's own code: tells its processor time (ms) and memory (bytes) when asked, and for how long it was held
// at a time since it was last asked for that (ms).
const { openSync, readSync } = require('node:fs');

const told = process.platform === 'linux' ? openSync(`/proc/self/task/${process.pid}/schedstat`, 'r') : null;
const room = Buffer.alloc(80);

/** Processor time of the main thread alone, ms, where the system tells it; else that of all threads. */
function processorTime() {
  if (told !== null)
    return Number(room.toString('latin1', 0, readSync(told, room, 0, room.length, 0)).split(' ')[0]) / 1e6;
  const { user, system } = process.cpuUsage();
  return (user + system) / 1000;
}

/** Between two looks, ms. */
const TICK = 2;
/** @type {{ clock: number, processor: number } | null} */
let last = null;
let longest = { clock: 0, processor: 0 };

function look() {
  const now = { clock: performance.now(), processor: processorTime() };
  if (last) {
    longest.clock = Math.max(longest.clock, now.clock - last.clock - TICK);
    longest.processor = Math.max(longest.processor, now.processor - last.processor);
  }
  last = now;
}

process.on('message', asked => {
  if (asked === 'wait') {
    // From the first time on.
    if (last === null) setInterval(look, TICK).unref();
    look();
    process.send?.(longest);
    longest = { clock: 0, processor: 0 };
    return;
  }
  const { user, system } = process.cpuUsage();
  process.send?.({ processor: (user + system) / 1000, memory: process.memoryUsage.rss() });
});
process.channel?.unref();
