package org.papermath.json.kit;

import java.util.Collection;
import java.util.List;
import java.util.NoSuchElementException;
import java.util.Objects;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import org.papermath.quantity.PapermathException;

/**
 * What reading a value gave: the value; nothing, for an optional member that is not there; or a fault, which is already
 * reported, so that reading can go on.
 *
 * <p>Take values out inside {@link ObjectReader#make}: that runs only when every value of the object could be read.
 *
 * @param <T> the type of the value
 */
public final class ReadResult<T> {
    private final ValueReader place;
    private final @Nullable T value;
    private final boolean faulty;

    /** Signals that a value is needed which has a fault, already reported. Caught by the reader, never seen outside. */
    static final class Faulty extends RuntimeException {
        private static final long serialVersionUID = 1L;

        Faulty() {
            super("a value with a fault was taken outside make(...)", null, false, false);
        }
    }

    private ReadResult(ValueReader place, @Nullable T value, boolean faulty) {
        this.place = place;
        this.value = value;
        this.faulty = faulty;
    }

    /**
     * Makes the result of a value that needs no reading of its own.
     *
     * @param <T> the type of the value
     * @param place where faults go that are found in it later
     * @param value the value
     * @return the result
     */
    public static <T> ReadResult<T> of(ValueReader place, T value) {
        Objects.requireNonNull(place, "place");
        Objects.requireNonNull(value, "value");
        return new ReadResult<>(place, value, false);
    }

    /**
     * Makes the result of a member that is not there.
     *
     * @param <T> the type of the value
     * @param place where it would stand
     * @return the result
     */
    public static <T> ReadResult<T> nothing(ValueReader place) {
        Objects.requireNonNull(place, "place");
        return new ReadResult<>(place, null, false);
    }

    /**
     * Makes the result of a value that has a fault, which is already reported.
     *
     * @param <T> the type of the value
     * @param place where the value stands
     * @return the result
     */
    public static <T> ReadResult<T> faulty(ValueReader place) {
        Objects.requireNonNull(place, "place");
        return new ReadResult<>(place, null, true);
    }

    /**
     * Returns where it was read.
     *
     * @return the reader at that place
     */
    public ValueReader place() {
        return place;
    }

    /**
     * Returns whether something is written that has a fault, already reported.
     *
     * @return whether there is no value for this reason
     */
    public boolean isFaulty() {
        return faulty;
    }

    /**
     * Returns whether something is written, readable or not.
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
            throw faulty
                    ? new Faulty()
                    : new NoSuchElementException("nothing is written at " + place.pointer()
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
    public <R> ReadResult<R> map(Function<? super T, ? extends R> function) {
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
    public ReadResult<T> check(Consumer<? super T> check) {
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

    /**
     * Returns the word most like the text read here; nobody looks for it once there are too many faults.
     *
     * @param words the words to choose from
     * @return the nearest word, empty if none is near
     */
    public String nearest(Collection<String> words) {
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
    public ReadResult<T> refuse(String code, String text, Collection<String> accepted) {
        place.refuse(code, text, accepted);
        return faulty(place);
    }

    @Override
    public String toString() {
        return faulty ? "faulty" : String.valueOf(value);
    }
}
