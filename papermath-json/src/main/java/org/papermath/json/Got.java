package org.papermath.json;

import java.util.Collection;
import java.util.List;
import java.util.NoSuchElementException;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.function.Function;

import org.jspecify.annotations.Nullable;
import org.papermath.quantity.PapermathException;

/**
 * What reading a value gave: the value; nothing, for an optional member that is not there; or a fault, which is already
 * reported, so that reading can go on.
 *
 * <p>Take values out inside {@link ObjectAt#make}: that runs only when every value of the object could be read.
 *
 * @param <T> the type of the value
 */
public final class Got<T> {
    private final ValueAt place;
    private final @Nullable T value;
    private final boolean faulty;

    /** Says that a value is wanted which has a fault, already reported. Caught by the reader, never seen outside. */
    static final class Faulty extends RuntimeException {
        private static final long serialVersionUID = 1L;

        Faulty() {
            super("a value with a fault was taken outside make(...)", null, false, false);
        }
    }

    private Got(ValueAt place, @Nullable T value, boolean faulty) {
        this.place = place;
        this.value = value;
        this.faulty = faulty;
    }

    static <T> Got<T> of(ValueAt place, T value) {
        return new Got<>(place, value, false);
    }

    static <T> Got<T> nothing(ValueAt place) {
        return new Got<>(place, null, false);
    }

    static <T> Got<T> faulty(ValueAt place) {
        return new Got<>(place, null, true);
    }

    boolean isFaulty() {
        return faulty;
    }

    /**
     * Tells whether something is written, readable or not.
     *
     * @return whether the member is there
     */
    public boolean isGiven() {
        return faulty || value != null;
    }

    /**
     * Returns the value of a required member.
     *
     * @return the value
     * @throws NoSuchElementException if the member is optional and not there
     */
    public T get() {
        T known = value;
        if (known == null) {
            throw faulty ? new Faulty() : new NoSuchElementException("nothing is written at " + place.pointer()
                    + "; use orElse or optional() for an optional member");
        }
        return known;
    }

    /**
     * Returns the value, or another if nothing is written.
     *
     * @param other the value for a member that is not there
     * @return the value
     */
    public T orElse(T other) {
        T known = value;
        if (known == null) {
            if (faulty) {
                throw new Faulty();
            }
            return other;
        }
        return known;
    }

    /**
     * Hands the value over, if one is written.
     *
     * @param taker takes the value
     */
    public void ifGiven(Consumer<? super T> taker) {
        T known = value;
        if (known != null) {
            taker.accept(known);
        } else if (faulty) {
            throw new Faulty();
        }
    }

    /** Returns the value, if one is written and was read. */
    Optional<T> optionalUnlessFaulty() {
        return faulty ? Optional.empty() : optional();
    }

    /**
     * Returns the value, if one is written.
     *
     * @return the value
     */
    public Optional<T> optional() {
        if (faulty) {
            throw new Faulty();
        }
        return Optional.ofNullable(value);
    }

    /**
     * Makes another value of this one. A refusal thrown meanwhile becomes a fault at the place of the value.
     *
     * @param <R> the type of the other value
     * @param function what makes it
     * @return the other value; nothing or faulty as this is
     */
    public <R> Got<R> map(Function<? super T, ? extends R> function) {
        T known = value;
        if (known == null) {
            return faulty ? faulty(place) : nothing(place);
        }
        try {
            return of(place, function.apply(known));
        } catch (PapermathException e) {
            place.refuse(e, List.of());
            return faulty(place);
        } catch (Faulty e) {
            return faulty(place);
        }
    }

    /**
     * Runs a check. A refusal it throws becomes a fault at the place of the value.
     *
     * @param check the check, such as {@code q -> Kinds.LENGTH.siAboveZero(q, "sheet width")}
     * @return this value, or a faulty one
     */
    public Got<T> check(Consumer<? super T> check) {
        T known = value;
        if (known == null) {
            return this;
        }
        try {
            check.accept(known);
            return this;
        } catch (PapermathException e) {
            place.refuse(e, List.of());
            return faulty(place);
        } catch (Faulty e) {
            return faulty(place);
        }
    }

    /** Returns the word most like this text; nobody looks for it once there are too many faults. */
    String nearest(Collection<String> words) {
        return place.nearest(String.valueOf(value), words);
    }

    /**
     * Reports a fault at the place of the value.
     *
     * @param code a stable dotted name
     * @param text the sentence for a person
     * @param accepted what could stand there, if it can be listed; the nearest word is found among them
     * @return a faulty value
     */
    public Got<T> refuse(String code, String text, Collection<String> accepted) {
        place.refuse(code, text, accepted);
        return faulty(place);
    }

    @Override
    public String toString() {
        return faulty ? "faulty" : String.valueOf(value);
    }
}
