/** `#scene` shows one scene; without it, a list of them. `?theme=` sets the theme. */
import '../../../src/ui/style/style.css';
import { createRoot } from 'react-dom/client';
import { SCENES } from './scenes.tsx';

const theme = new URLSearchParams(location.search).get('theme');
if (theme) document.documentElement.dataset.theme = theme;

const host = document.querySelector('#app');
if (!host) throw new Error('the gallery requires #app');
const root = createRoot(host);
const show = () => {
  const scene = SCENES.find((candidate) => candidate.name === location.hash.slice(1));
  root.render(
    scene ? (
      <div key={scene.name}>{scene.render()}</div>
    ) : (
      <ul>
        {SCENES.map(({ name }) => (
          <li key={name}>
            <a href={`#${name}`}>{name}</a>
          </li>
        ))}
      </ul>
    ),
  );
};
addEventListener('hashchange', show);
show();
