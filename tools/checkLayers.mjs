// Runs dependency-cruiser over the house and fails when it saw fewer modules than there are source files: a cruiser that
// cannot parse the code reports "no violations" for nothing at all.
import { readdirSync } from 'node:fs';
import { cruise } from 'dependency-cruiser';
import layers from '../.dependency-cruiser.mjs';

const roots = ['src', 'worklets'];
const sourceFileCount = roots
  .flatMap((root) => readdirSync(root, { recursive: true, withFileTypes: true }))
  .filter((entry) => entry.isFile() && /\.tsx?$/.test(entry.name)).length;

const { output } = await cruise(roots, { ...layers.options, ruleSet: { forbidden: layers.forbidden }, validate: true });
const own = output.modules.filter((module) => /^(src|worklets)\/.*\.tsx?$/.test(module.source));
if (own.length < sourceFileCount || sourceFileCount === 0) {
  console.error(`The layer check read ${own.length} of ${sourceFileCount} source files, so its result means nothing.`);
  process.exit(1);
}
const faults = output.summary.violations.filter((violation) => violation.rule.severity === 'error');
for (const fault of faults) {
  const rule = layers.forbidden.find((candidate) => candidate.name === fault.rule.name);
  console.error(`${fault.from} → ${fault.to}\n  ${fault.rule.name}: ${rule?.comment ?? ''}`);
}
console.log(`layers: ${own.length} modules, ${faults.length} violations`);
process.exit(faults.length === 0 ? 0 : 1);
