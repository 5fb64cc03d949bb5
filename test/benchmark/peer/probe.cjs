// Goes before a server's own code: tells its processor time (ms) and memory (bytes) when asked, and for how long it was held
// at a time since it was last asked for that (ms).
const { openSync, readSync } = require('node:fs');

const told = process.platform === 'linux' ? openSync(`/proc/self/task/${process.pid}/schedstat`, 'r') : null;
const room = Buffer.alloc(80);

/**
 * The main thread alone, where the system tells it: its processor time, and for how long it could have run but had no
 * processor, ms. Elsewhere the processor time of all threads.
 */
function mainThread() {
  if (told !== null) {
    const [processor, queued] = room.toString('latin1', 0, readSync(told, room, 0, room.length, 0)).split(' ');
    return { processor: Number(processor) / 1e6, queued: Number(queued) / 1e6 };
  }
  const { user, system } = process.cpuUsage();
  return { processor: (user + system) / 1000, queued: 0 };
}

/** Between two looks, ms. */
const TICK = 2;
const NONE = { clock: 0, own: 0, processor: 0 };
/** @type {{ clock: number, processor: number, queued: number } | null} */
let last = null;
let longest = NONE;

function look() {
  const now = { clock: performance.now(), ...mainThread() };
  if (last) {
    const clock = now.clock - last.clock - TICK;
    longest = {
      clock: Math.max(longest.clock, clock),
      own: Math.max(longest.own, clock - (now.queued - last.queued)),
      processor: Math.max(longest.processor, now.processor - last.processor),
    };
  }
  last = now;
}

process.on('message', asked => {
  if (asked === 'wait') {
    // From the first time on.
    if (last === null) setInterval(look, TICK).unref();
    look();
    process.send?.(longest);
    longest = NONE;
    return;
  }
  const { user, system } = process.cpuUsage();
  process.send?.({ processor: (user + system) / 1000, memory: process.memoryUsage.rss() });
});
process.channel?.unref();
