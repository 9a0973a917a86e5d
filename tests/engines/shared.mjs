// One browser for the tests of a file that want the same settings: to start it takes longest.

/** Browsers that `begin` starts with certain settings; each has an `end`. */
export function sharedBrowsers(begin) {
    /** The browser that runs, what it was started with, and how many pages use it. */
    let running;
    return {
        /** A browser with these settings; the one that runs, if it will do. */
        async taken(wanted) {
            const key = JSON.stringify(wanted);
            if (running?.key !== key || running.hurt) {
                const before = running;
                if (before && before.users === 0) clearTimeout(before.timer), await before.end();
                running = { key, users: 0, ...await begin(wanted) };
            }
            clearTimeout(running.timer);
            ++running.users;
            return running;
        },
        /** The last who leaves turns off the light, unless somebody comes soon. */
        left(used) {
            if (--used.users > 0) return undefined;
            if (used !== running) return used.end();
            used.timer = setTimeout(() => {
                running = undefined;
                used.end();
            }, 500);
            return undefined;
        },
    };
}
