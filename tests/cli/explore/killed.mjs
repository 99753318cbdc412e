// A search that writes down every job at once and says so, to be killed from outside. Arguments: question, file, resume.
import { CheckpointFile } from '../../../dist/search/checkpoint/checkpoint-file.js';
import { explore } from '../../../dist/search/explore.js';

const [question, path, resume] = process.argv.slice(2);
const say = (line) => process.stderr.write(`${line}\n`);
const asked = JSON.parse(question);
const outcome = await explore(asked, {
  workers: 2,
  checkpoint: ({ way, written, numbers }) => {
    const header = { program: '0', question: asked, space: { way, written, numbers } };
    const journal = new CheckpointFile(path, header, { resume: resume === 'resume', every: 0, say });
    return {
      has: (key) => journal.has(key),
      result: (key) => journal.result(key),
      record: (key, result) => {
        journal.record(key, result);
        say('recorded');
      },
    };
  },
});
process.stdout.write(JSON.stringify(outcome));
