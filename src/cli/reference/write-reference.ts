import { writeWhole } from '../../files/whole.js';
import { reference } from './reference.js';

writeWhole(process.argv[2]!, reference());
