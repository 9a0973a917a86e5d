// Other vessels, substances and last lines in the built page: each asks for its own readings, is drawn, has no axe violation,
// and gives back what was typed for another one.
import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { describe, it } from 'node:test';
import { kinds, still } from './harness.mjs';
import { violations, withPage } from './people.mjs';

const english = JSON.parse(readFileSync(new URL('../../assets/text/en.json', import.meta.url), 'utf8'));
const at = (tab, key) => tab.locator(`[data-key="${key}"]`);
const choose = async (tab, key, value) => {
    await at(tab, key).selectOption(value);
    await still(tab);
};
const type = async (tab, readings) => {
    for (const [name, text] of Object.entries(readings)) {
        await at(tab, `bench.${name}`).fill(text);
        await still(tab);
    }
};
const headline = (tab) => at(tab, 'result.headline').textContent();
/** A busy machine needs more than the moment that counts as still. */
const becomes = async (tab, wanted) => {
    for (let tries = 0; tries < 50 && !wanted.test(await headline(tab)); ++tries) await tab.waitForTimeout(100);
    assert.match(await headline(tab), wanted);
};

/** What is asked for, and what is not. */
const vessels = {
    generator_flask: { asks: ['injected_volume', 'scale_reading', 'level_difference'], not: ['displaced_mass', 'flask_volume'] },
    gas_syringe: { asks: ['start_reading', 'scale_reading'], not: ['end_space', 'level_difference', 'number_at_closed_end'] },
    displaced_water: { asks: ['displaced_mass'], not: ['scale_reading', 'tube_capacity', 'level_difference'] },
    pressure_sensor: { asks: ['flask_volume', 'pressure_after'], not: ['scale_reading', 'end_space', 'level_difference'] },
};

for (const kind of kinds) {
    describe(`other vessels, ${kind}`, { timeout: 600_000 }, () => {
        it('ask for what they have, are drawn, and lose nothing that was typed', () => withPage({ kind }, async ({ tab }) => {
            const before = await headline(tab);
            await at(tab, 'bench.details.tube').click();
            await still(tab);
            for (const [name, { asks, not }] of Object.entries(vessels)) {
                await choose(tab, 'bench.apparatus', name);
                for (const reading of asks) await at(tab, `bench.${reading}`).waitFor({ state: 'attached' });
                for (const reading of not) await at(tab, `bench.${reading}`).waitFor({ state: 'detached' });
                await at(tab, 'tube.picture').waitFor({ state: 'attached' });
                await still(tab);
                assert.ok((await at(tab, 'tube.picture').getAttribute('aria-label'))?.startsWith(english[`choice.apparatus.${name}`]));
                assert.deepEqual(await violations(tab), [], name);
            }
            await choose(tab, 'bench.apparatus', 'tube_over_water');
            await becomes(tab, /22\.68/); // record A by method.md
            assert.equal(await headline(tab), before);
            assert.equal(await at(tab, 'bench.scale_reading').inputValue(), '9.15');
        }));

        it('a closed flask: the published run of 0.010 g of magnesium gives 22.5 L/mol', () => withPage({ kind }, async ({ tab }) => {
            // A student group's report (2018): 145 mL, 0.010 g, 0.0691 atm, 22.2 °C; by the metal's amount 22.52 L/mol.
            await at(tab, 'bench.details.tube').click();
            await still(tab);
            await choose(tab, 'bench.apparatus', 'pressure_sensor');
            await type(tab, { mass_of_metal: '0.0100', flask_volume: '145', pressure_after: '1.0691 atm', barometer: '1.0000 atm', temperature: '22.2', acid_volume: '' });
            await at(tab, 'header.conventions').click();
            await still(tab);
            await at(tab, 'conventions.standard.0C_1atm.label').click();
            await still(tab);
            await at(tab, 'header.bench').click();
            await still(tab);
            await becomes(tab, /22\.5/);
        }));

        it('another last line is the headline, with what is known of it', () => withPage({ kind }, async ({ tab }) => {
            await at(tab, 'bench.details.metal').click();
            await still(tab);
            await choose(tab, 'bench.target', 'molar_mass');
            // Record A by method.md: 24.305 x 22.7110/22.6818 = 24.336 g/mol.
            await becomes(tab, /24\.34/);
            await choose(tab, 'bench.target', 'gas_constant');
            await becomes(tab, /8\.30/); // method.md: 8.30380 J/(mol K)
            await choose(tab, 'bench.metal', 'calcium_carbonate');
            assert.equal(await at(tab, 'bench.mass_of_metal.label').textContent(), english['field.mass_of_metal.substance']);
            assert.deepEqual(await violations(tab), []);
            await choose(tab, 'bench.metal', 'magnesium');
            await choose(tab, 'bench.target', 'molar_volume');
            await becomes(tab, /22\.68/); // method.md
        }));
    });
}
