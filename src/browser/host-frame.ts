/** A page of ours whose policy lets it ask; beside the page in the bundle. */
const FRAME_PAGE = "base-map-frame.html";

interface Way {
  readonly origin: string;
  readonly element: HTMLIFrameElement;
  readonly within: Promise<Window & typeof globalThis>;
}

/** A way to one host at a time. */
export interface HostFrame {
  /** @throws TypeError when the host does not answer, or sends on to another host */
  readonly fetch: (address: string, how: RequestInit) => Promise<Response>;
  /** Closes the way to the host that was named. */
  readonly close: () => void;
}

/**
 * Fetches from the one host that the person named. The page's own policy allows no other host, and a policy cannot be
 * widened while a page is open; so a frame of our own asks, under a policy that allows that host alone.
 * @param title what it is for
 */
export function hostFrame(title: string): HostFrame {
  let way: Way | null = null;
  const close = () => {
    way?.element.remove();
    way = null;
  };
  return {
    close,
    fetch: async (address, how) => {
      const { origin } = new URL(address);
      if (way?.origin !== origin) {
        close();
        way = open(origin, title);
      }
      const within = await way.within;
      return within.fetch(address, how);
    },
  };
}

function open(origin: string, title: string): Way {
  const element = document.createElement("iframe");
  element.hidden = true;
  element.title = title;
  element.src = FRAME_PAGE;
  const within = new Promise<Window & typeof globalThis>((resolve, reject) => {
    element.onload = () => {
      const inside = element.contentDocument?.defaultView;
      if (inside) resolve(narrowed(inside, origin));
      else reject(new TypeError(`The frame for ${title} did not open.`));
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
