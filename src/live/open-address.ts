import { asFailure, type Failure, failureOf, Refusal, refusal } from "../../shared/failure.ts";
import type { TerrainRef } from "../../shared/plan.ts";
import { readRasterAddress } from "../../shared/raster-address.ts";
import { tell } from "../document/notices.ts";
import { FileAt } from "./file-at.ts";
import { openGround } from "./open-ground.ts";

/**
 * Opens the raster at a web address that the person typed or pasted: from here on its host, and no other, is asked for
 * the parts that are needed. @returns why it could not be opened
 */
export function openAddress(text: string): Promise<Failure | null> {
  return openAt([{ address: text, bytes: 0 }]);
}

/** Opens the addresses of a plan, once the person says so. */
async function openAddressesOf(terrain: readonly TerrainRef[]): Promise<void> {
  const named = terrain.flatMap(({ address, bytes }) => (address ? [{ address, bytes }] : []));
  const failure = await openAt(named);
  if (failure) tell("error", failure);
}

async function openAt(
  named: readonly { readonly address: string; readonly bytes: number }[],
): Promise<Failure | null> {
  try {
    const files = named.map(({ address, bytes }) => {
      const read = readRasterAddress(address);
      if (!read.ok) throw new Refusal(read.failure);
      return new FileAt(read.value, bytes);
    });
    const hosts = new Set(files.map(({ at }) => at.origin));
    if (hosts.size > 1) throw refusal("address/hosts", { hosts: [...hosts].slice(0, 5) });
    return await openGround(files);
  } catch (thrown) {
    if (thrown instanceof Refusal) return asFailure(thrown);
    throw thrown;
  }
}

/** Says that a plan's elevation data is at a web address, and asks before anything is asked there. */
export function askToOpen(terrain: readonly TerrainRef[]): void {
  const addresses = terrain.flatMap(({ address }) => address ?? []);
  const hosts = addresses.flatMap((address) => {
    const read = readRasterAddress(address);
    return read.ok ? [read.value.host] : [];
  });
  const [host] = hosts;
  if (host === undefined) return;
  const names = terrain.map(({ name }) => name).join(", ");
  tell(
    "info",
    failureOf("address/ask", { names: names.slice(0, 200), hosts: [...new Set(hosts)] }),
    { label: `Open it from ${host}`, run: () => void openAddressesOf(terrain) },
  );
}
