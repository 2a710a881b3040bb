package org.papermath.evidence;

import java.util.Arrays;
import java.util.function.Consumer;
import org.jspecify.annotations.Nullable;

/**
 * An immutable map by text. Putting a value in makes a new map that shares all but the way to that value with the old
 * one, so it costs about the same however much the map holds. Five bits of the hash choose the slot on each level.
 */
final class SharedMap<V> {
    private static final int BITS = 5;
    private static final SharedMap<?> EMPTY = new SharedMap<>(0, new Object[0]);

    /** One bit for each slot in use; the slots in use stand close together. */
    private final int used;
    /** Either an entry or the map of the next level. */
    private final Object[] slots;

    /** A key with its value, and those with the very same hash. */
    private record Entry<V>(
            int hash, String key, V value, @Nullable Entry<V> next) {
        @Nullable
        V get(String wanted) {
            for (Entry<V> one = this; one != null; one = one.next) {
                if (one.key.equals(wanted)) {
                    return one.value;
                }
            }
            return null;
        }

        Entry<V> with(String wanted, V newValue) {
            Entry<V> others = without(this, wanted);
            return new Entry<>(hash, wanted, newValue, others);
        }

        private static <V> @Nullable Entry<V> without(@Nullable Entry<V> from, String wanted) {
            if (from == null || from.key.equals(wanted)) {
                return from == null ? null : from.next;
            }
            return new Entry<>(from.hash, from.key, from.value, without(from.next, wanted));
        }
    }

    private SharedMap(int used, Object[] slots) {
        this.used = used;
        this.slots = slots;
    }

    /** Returns the map that holds nothing. */
    @SuppressWarnings("unchecked")
    static <V> SharedMap<V> empty() {
        return (SharedMap<V>) EMPTY;
    }

    private static int hash(String key) {
        int hash = key.hashCode();
        return hash ^ hash >>> 16;
    }

    private static int bit(int hash, int shift) {
        return 1 << (hash >>> shift & (1 << BITS) - 1);
    }

    private int place(int bit) {
        return Integer.bitCount(used & bit - 1);
    }

    private @Nullable Object slot(int bit) {
        return (used & bit) == 0 ? null : slots[place(bit)];
    }

    /** Returns the value of a key. */
    @Nullable
    V get(String key) {
        return find(this, hash(key), key, 0);
    }

    @SuppressWarnings({"unchecked", "TypeParameterUnusedInFormals"}) // what is nested knows no type of its own
    private static <V> @Nullable V find(@Nullable Object from, int hash, String key, int level) {
        Object at = from;
        for (int shift = level; at instanceof SharedMap<?> map; shift += BITS) {
            at = map.slot(bit(hash, shift));
        }
        return at == null || ((Entry<V>) at).hash != hash ? null : ((Entry<V>) at).get(key);
    }

    /** Returns a map with a value put in, in place of one of the same key. */
    SharedMap<V> with(String key, V value) {
        return with(hash(key), key, value, 0);
    }

    @SuppressWarnings("unchecked")
    private SharedMap<V> with(int hash, String key, V value, int shift) {
        int bit = bit(hash, shift);
        int place = place(bit);
        if ((used & bit) == 0) {
            Object[] more = new Object[slots.length + 1];
            System.arraycopy(slots, 0, more, 0, place);
            more[place] = new Entry<>(hash, key, value, null);
            System.arraycopy(slots, place, more, place + 1, slots.length - place);
            return new SharedMap<>(used | bit, more);
        }
        Object[] same = Arrays.copyOf(slots, slots.length);
        if (slots[place] instanceof SharedMap<?> map) {
            same[place] = ((SharedMap<V>) map).with(hash, key, value, shift + BITS);
        } else {
            Entry<V> there = (Entry<V>) slots[place];
            same[place] = there.hash == hash
                    ? there.with(key, value)
                    : new SharedMap<V>(bit(there.hash, shift + BITS), new Object[] {there})
                            .with(hash, key, value, shift + BITS);
        }
        return new SharedMap<>(used, same);
    }

    /** Passes every value on, in no order that means anything. */
    void forEach(Consumer<? super V> each) {
        SharedMap.<V>entries(this, entry -> each.accept(entry.value));
    }

    @SuppressWarnings("unchecked")
    private static <V> void entries(@Nullable Object at, Consumer<Entry<V>> each) {
        if (at instanceof SharedMap<?> map) {
            for (Object slot : map.slots) {
                entries(slot, each);
            }
        } else {
            for (Entry<V> one = (Entry<V>) at; one != null; one = one.next) {
                each.accept(one);
            }
        }
    }

    /** Takes what stands at a key in two maps. */
    interface Pair<V> {
        void accept(@Nullable V one, @Nullable V other);
    }

    /**
     * Passes on, for each key, what stands there in one map and in the other, where that is not the same object; null
     * where there is nothing. What the two share is not looked at.
     */
    static <V> void differing(SharedMap<V> one, SharedMap<V> other, Pair<? super V> each) {
        SharedMap.<V>differing(one, other, 0, each);
    }

    private static <V> void differing(@Nullable Object one, @Nullable Object other, int shift, Pair<? super V> each) {
        if (one == other) {
            return;
        }
        if (one instanceof SharedMap<?> a && other instanceof SharedMap<?> b) {
            int either = a.used | b.used;
            while (either != 0) {
                int bit = Integer.lowestOneBit(either);
                either &= ~bit;
                SharedMap.<V>differing(a.slot(bit), b.slot(bit), shift + BITS, each);
            }
            return;
        }
        SharedMap.<V>entries(one, entry -> {
            V there = find(other, entry.hash, entry.key, shift);
            if (there != entry.value) {
                each.accept(entry.value, there);
            }
        });
        SharedMap.<V>entries(other, entry -> {
            if (find(one, entry.hash, entry.key, shift) == null) {
                each.accept(null, entry.value);
            }
        });
    }
}
