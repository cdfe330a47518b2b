/**
 * The only file that knows Handlebars. A template is `room/name.hbs` under templates/; partials are the files of
 * parts/ and every `_name.hbs`. Rendering is strict: a key the view lacks is an error, not a blank.
 */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import Handlebars from 'handlebars';

const HOME = import.meta.dirname;
const engine = Handlebars.create();
const compiled = new Map<string, Handlebars.TemplateDelegate>();
let loaded = false;

/**
 * Render a template to HTML. All text is escaped by the engine.
 * @param name path under templates/ without `.hbs`, text
 * @param view ready strings and lists; a template does no arithmetic
 * @returns HTML
 * @throws Error when the template or a key of it is missing
 */
export function render(name: string, view: object): string {
  load();
  let template = compiled.get(name);
  if (!template) {
    template = engine.compile(readFileSync(join(HOME, `${name}.hbs`), 'utf8'), {
      strict: true,
      assumeObjects: false,
      preventIndent: true,
    });
    compiled.set(name, template);
  }
  return template(view, { allowProtoPropertiesByDefault: false, allowProtoMethodsByDefault: false });
}

function load(): void {
  if (loaded) return;
  for (const entry of readdirSync(HOME, { recursive: true, encoding: 'utf8' })) {
    const path = entry.replaceAll('\\', '/');
    if (!path.endsWith('.hbs')) continue;
    const isPart = path.startsWith('parts/') || path.split('/').at(-1)?.startsWith('_');
    if (!isPart) continue;
    const name = path.replace(/\.hbs$/, '');
    engine.registerPartial(name, readFileSync(join(HOME, path), 'utf8'));
  }
  loaded = true;
}
