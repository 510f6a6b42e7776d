/** Where base map pictures are asked for; beside the page in the bundle. */
const FRAME_PAGE = "base-map-frame.html";

interface Way {
  readonly origin: string;
  readonly element: HTMLIFrameElement;
  readonly within: Promise<Window & typeof globalThis>;
}

let way: Way | null = null;

/**
 * Fetches from the one host that the person named. The page's own policy allows no other host, and a policy cannot be
 * widened while a page is open; so a frame of our own asks, under a policy that allows that host alone.
 * @throws TypeError when the host does not answer, or sends on to another host
 */
export async function fetchFromNamed(address: string, signal: AbortSignal): Promise<Response> {
  const { origin } = new URL(address);
  if (way?.origin !== origin) {
    closeBaseMapFrame();
    way = open(origin);
  }
  const within = await way.within;
  return within.fetch(address, { signal });
}

/** Closes the way to the host that was named. */
export function closeBaseMapFrame(): void {
  way?.element.remove();
  way = null;
}

function open(origin: string): Way {
  const element = document.createElement("iframe");
  element.hidden = true;
  element.title = "Base map";
  element.src = FRAME_PAGE;
  const within = new Promise<Window & typeof globalThis>((resolve, reject) => {
    element.onload = () => {
      const inside = element.contentDocument?.defaultView;
      if (inside) resolve(narrowed(inside, origin));
      else reject(new TypeError("The base map's frame did not open."));
    };
  });
  document.body.append(element);
  return { origin, element, within };
}

function narrowed(inside: Window & typeof globalThis, origin: string) {
  const policy = inside.document.createElement("meta");
  policy.httpEquiv = "Content-Security-Policy";
  policy.content = `default-src 'none'; connect-src ${origin}`;
  inside.document.head.append(policy);
  return inside;
}
