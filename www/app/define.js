/**
 * What a host's page loads: registers the calculator under its usual name. Its own address never changes; what it asks for has names that
 * change with what is in them, and is asked for at once instead of one file after the other.
 */

import { askAhead } from "./ahead.js";
import { NAME, register } from "./register.js";

askAhead(document, NAME);
register();
