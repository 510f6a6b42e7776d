import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import { failureOf } from "../../shared/failure.ts";
import { roomWords } from "../../shared/words/storage-room.ts";
import { followRoom, storageRoom } from "../../src/document/storage-room.ts";
import { said } from "../helpers/said.ts";

const GB = 1e9;

/** A browser's storage that counts how often it is asked to keep things. */
function storage(quota: number, usage = 12e6) {
  const asked = { times: 0, stays: false };
  return {
    asked,
    room: { quota, usage },
    persisted: async () => asked.stays,
    async persist() {
      asked.times += 1;
      asked.stays = true;
      return true;
    },
    async estimate() {
      return this.room;
    },
  };
}

describe("the room that the browser has for plans", () => {
  const remembered = new Map<string, string>();
  beforeEach(() => {
    remembered.clear();
    vi.useFakeTimers({ toFake: ["Date"], now: 0 });
    vi.stubGlobal("localStorage", {
      getItem: (key: string) => remembered.get(key) ?? null,
      setItem: (key: string, value: string) => remembered.set(key, value),
    });
  });
  afterEach(() => {
    vi.useRealTimers();
    vi.unstubAllGlobals();
    storageRoom.value = null;
  });

  it("is asked to stay at the first edit that is kept, not before, and never again on this machine", async () => {
    const browser = storage(2 * GB);
    const onLow = vi.fn();
    const kept = followRoom({ storage: browser, onLow });
    await kept(false);
    expect(browser.asked.times).toBe(0);
    expect(storageRoom.value).toMatchObject({ usedBytes: 12e6, stays: false });
    await kept(true);
    await kept(true);
    browser.asked.stays = false;
    await followRoom({ storage: browser, onLow })(true);
    expect(browser.asked.times).toBe(1);
    expect(onLow).not.toHaveBeenCalled();
  });

  it("is told once when it runs low, and once more after there was room between", async () => {
    const browser = storage(40e6);
    const onLow = vi.fn();
    const kept = followRoom({ storage: browser, onLow });
    const later = async (quota: number) => {
      browser.room = { ...browser.room, quota };
      vi.setSystemTime(Date.now() + 61_000);
      await kept(false);
    };
    await kept(false);
    await kept(false);
    await later(40e6);
    expect(onLow.mock.calls).toEqual([[28e6]]);
    await later(2 * GB);
    await later(5e6);
    expect(onLow.mock.calls).toEqual([[28e6], [0]]);
  });

  it("is not known where the browser has none for the page, or refuses", async () => {
    const onLow = vi.fn();
    await followRoom({ storage: undefined, onLow })(true);
    const refusing = { ...storage(GB), persisted: () => Promise.reject(new Error("blocked")) };
    await followRoom({ storage: refusing, onLow })(true);
    expect(storageRoom.value).toBeNull();
    expect(onLow).not.toHaveBeenCalled();
  });

  it("is said in plain words", () => {
    expect(roomWords({ usedBytes: 12.4e6, leftBytes: 2.14e9, stays: true })).toBe(
      "Saved in this browser: 12 MB, room for 2.1 GB more. It stays until you clear it.",
    );
    expect(roomWords({ usedBytes: 9e5, leftBytes: 999e6, stays: false })).toContain(
      "under 1 MB, room for 999 MB more. The browser may clear it",
    );
    expect(said(failureOf("autosave/almost-full", { leftBytes: 28e6 })).message).toContain(
      "only 28 MB more",
    );
  });
});
