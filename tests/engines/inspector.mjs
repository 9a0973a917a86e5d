// Talks to the remote inspector of WebKitGTK, beside WebDriver: it hears the page's messages and requests, runs a script before each
// document's own, and says what the person prefers, none of which WebDriver can.
//
// A message on the socket is its length (4 bytes, big-endian), a byte of flags (1: little-endian), its name and a zero, and a GVariant.
// Those used here are a byte string, two 64-bit numbers (connection and target), or the two and a text, which GVariant puts one after
// the other without anything between them. See Source/WTF/wtf/glib/SocketConnection.cpp and
// Source/JavaScriptCore/inspector/remote/glib/RemoteInspectorServer.cpp in WebKit.
import { once } from 'node:events';
import { connect } from 'node:net';
import { setTimeout as pause } from 'node:timers/promises';

const uiProcess = 1n; // the first that connects to its own server
const taken = 2; // numbers of the first window, and of what WebKitWebDriver holds: to ask that anything would end its work
const answerWithin = 300_000;
const most = 8; // numbers that may lie between two windows

function pair(target) {
    const numbers = Buffer.alloc(16);
    numbers.writeBigUInt64LE(uiProcess, 0);
    numbers.writeBigUInt64LE(BigInt(target), 8);
    return numbers;
}

/** A connection to the inspector on a port; `take(text)` is called with what comes from a target. */
async function connection(port) {
    const socket = connect(port, '127.0.0.1');
    await once(socket, 'connect');
    socket.on('error', () => {});
    const takers = new Map();
    let held = Buffer.alloc(0);
    socket.on('data', (data) => {
        held = Buffer.concat([held, data]);
        while (held.length >= 5 && held.length >= 5 + held.readUInt32BE(0)) {
            const body = held.subarray(5, 5 + held.readUInt32BE(0));
            held = held.subarray(5 + body.length);
            const end = body.indexOf(0);
            const value = body.subarray(end + 1);
            if (body.toString('latin1', 0, end) !== 'SendMessageToFrontend') continue;
            takers.get(Number(value.readBigUInt64LE(8)))?.(JSON.parse(value.toString('utf8', 16, value.length - 1)));
        }
    });
    function say(name, ...values) {
        const body = Buffer.concat([Buffer.from(`${name}\0`), ...values]);
        const head = Buffer.alloc(5);
        head.writeUInt32BE(body.length, 0);
        head[4] = 1;
        socket.write(Buffer.concat([head, body]));
    }
    say('SetupInspectorClient', Buffer.from('\0'));
    return { say, takers, close: () => socket.destroy() };
}

/** The inspector of one window. `prepare(send)` is called for each process that shows its page, before the page does anything. */
function inspected({ say, takers }, number, prepare) {
    const waiting = new Map();
    const listeners = new Map();
    let last = 0;
    let page; // the target that is shown
    let [begin, finish] = [() => {}, () => {}];
    const begun = new Promise((resolve) => { begin = () => resolve(true); });
    const prepared = new Promise((resolve) => { finish = () => resolve(true); });

    const toRoot = (method, params) => say('SendMessageToBackend', pair(number), Buffer.from(`${JSON.stringify({ id: ++last, method, params })}\0`));
    const sendTo = (targetId, method, params = {}) => new Promise((resolve, reject) => {
        const id = ++last;
        const late = setTimeout(() => settle({ error: { message: 'no answer' } }), answerWithin);
        function settle({ result, error }) {
            clearTimeout(late);
            waiting.delete(id);
            if (error) reject(new Error(`${method}: ${error.message}`));
            else resolve(result);
        }
        waiting.set(id, { targetId, settle });
        toRoot('Target.sendMessageToTarget', { targetId, message: JSON.stringify({ id, method, params }) });
    });
    const lost = (targetId) => [...waiting.values()].filter((one) => one.targetId === targetId).forEach(({ settle }) => settle({ error: { message: 'the page has gone' } }));

    takers.set(number, ({ method, params }) => {
        if (method === 'Target.targetCreated' && params.targetInfo.type === 'page') {
            const { targetId, isProvisional, isPaused } = params.targetInfo;
            if (!isProvisional) page = targetId, begin();
            prepare((name, with_) => sendTo(targetId, name, with_)).catch(() => {}).then(() => {
                if (isPaused) toRoot('Target.resume', { targetId });
                finish();
            });
        } else if (method === 'Target.didCommitProvisionalTarget') {
            page = params.newTargetId;
            lost(params.oldTargetId);
        } else if (method === 'Target.targetDestroyed') {
            lost(params.targetId);
        } else if (method === 'Target.dispatchMessageFromTarget') {
            const inner = JSON.parse(params.message);
            if (inner.id) waiting.get(inner.id)?.settle(inner);
            else (listeners.get(inner.method) ?? []).forEach((listener) => listener(inner.params, params.targetId));
        }
    });
    say('Setup', pair(number));
    toRoot('Target.setPauseOnStart', { pauseOnStart: true });
    return {
        begun, prepared,
        send: (method, params) => sendTo(page, method, params),
        on: (method, listener) => listeners.set(method, [...(listeners.get(method) ?? []), listener]),
        leave() {
            takers.delete(number);
            say('FrontendDidClose', pair(number));
        },
    };
}

/** The inspector of a browser. */
export async function inspectorAt(port) {
    const all = await connection(port);
    let number = taken;
    /** The inspector of this number, if it is that of a window. */
    async function asked(which, prepare) {
        const one = inspected(all, which, prepare);
        if (!await Promise.race([one.begun, pause(1500, false)])) return void one.leave();
        await one.prepared;
        return one;
    }
    return {
        /** The inspector of the window that was opened last. Windows have numbers that rise; workers take some of them. */
        async newest(prepare) {
            for (let tries = 0; tries < most; ++tries) {
                const one = await asked(++number, prepare);
                if (one) return one;
            }
            throw new Error('the inspector does not answer');
        },
        /** The same after WebKitWebDriver has begun again: what it holds now has a lower number, so this looks from above. */
        async newestAgain(prepare) {
            const before = number;
            for (number += most; number > before; --number) {
                const one = await asked(number, prepare);
                if (one) return one;
            }
            throw new Error('the inspector does not answer');
        },
        close: all.close,
    };
}
