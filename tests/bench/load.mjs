// A thread that asks the same of a server over and over, so many at a time, and tells how often and how fast it was answered.
import { Buffer } from 'node:buffer';
import { Agent, request } from 'node:http';
import { parentPort, workerData } from 'node:worker_threads';

const { url, method, body, connections, seconds } = workerData;
const agent = new Agent({ keepAlive: true, maxSockets: connections });
const headers = body ? { 'content-type': 'application/json', 'content-length': Buffer.byteLength(body) } : {};

/** One request; its time in ms. Anything but 200 ends the bench. */
function ask() {
  const from = performance.now();
  return new Promise((resolve, reject) => {
    const asked = request(url, { agent, method, headers }, (response) => {
      let length = 0;
      let text = '';
      response.on('data', (part) => {
        length += part.length;
        if (response.statusCode !== 200) text += part;
      });
      response.on('end', () => {
        if (response.statusCode === 200 && length > 0) resolve(performance.now() - from);
        else reject(new Error(`answered ${response.statusCode}: ${text}`));
      });
    });
    asked.on('error', reject);
    asked.end(body ?? undefined);
  });
}

async function during(time) {
  const times = [];
  const until = performance.now() + time * 1000;
  const one = async () => {
    while (performance.now() < until) times.push(await ask());
  };
  await Promise.all(Array.from({ length: connections }, one));
  return times;
}

await during(Math.min(1, seconds / 2));
const from = performance.now();
const times = await during(seconds);
const perSecond = (1000 * times.length) / (performance.now() - from);
agent.destroy();
parentPort.postMessage({ perSecond, times });
