// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.units.text;

import java.io.Serializable;
import java.text.DecimalFormatSymbols;
import java.util.Arrays;
import java.util.Locale;
import java.util.Objects;
import java.util.function.Supplier;

/**
 * What is both kept and shown: logs and files keep English, whatever the reader speaks.
 *
 * <pre>{@code
 * Said said = Said.of(() -> TEXTS.text("limit.passed", limit));
 * log.note(said.kept());
 * label.setText(said.shown());
 * }</pre>
 *
 * @param kept in English
 * @param shown in the language that was spoken when it was made
 */
public record Said(String kept, String shown) implements Serializable {
    private static final long serialVersionUID = 1L;

    public Said {
        Objects.requireNonNull(kept, "kept");
        Objects.requireNonNull(shown, "shown");
    }

    /** A failure whose sentence is there in English too. */
    public interface Failure {
        /** Returns its sentence. */
        Said said();
    }

    /**
     * Makes it in English and in the language spoken now.
     *
     * @param words makes it in the language that is spoken when it is asked, so it is asked twice
     */
    public static Said of(Supplier<String> words) {
        return new Said(Language.speaking(Locale.ENGLISH, words::get), words.get());
    }

    /**
     * Makes it of a text.
     *
     * @param texts where the text is
     * @param key the text's name
     * @param arguments what stands for {0}, {1} and so on: what is said itself is so in the same language, a double has the
     *     language's decimal mark, and no number is grouped
     */
    public static Said of(Messages texts, String key, Object... arguments) {
        return of(() ->
                texts.text(key, Arrays.stream(arguments).map(Said::argument).toArray()));
    }

    private static String argument(Object argument) {
        if (argument instanceof Said said) {
            return said.text();
        }
        return argument instanceof Double number ? marked(number.toString()) : String.valueOf(argument);
    }

    private static String marked(String number) {
        return number.replace(
                '.', DecimalFormatSymbols.getInstance(Language.current()).getDecimalSeparator());
    }

    /**
     * Makes it of a number.
     *
     * @param format of {@link String#format}; it gives no letters
     */
    public static Said number(String format, double number) {
        return of(() -> marked(String.format(Locale.ROOT, format, number)));
    }

    /** Makes it of words that are the same in every language, or that somebody else made in one. */
    public static Said asIs(String words) {
        return new Said(words, words);
    }

    /**
     * Returns the sentence of a failure: of one of ours in both languages, of any other by its {@linkplain Throwable#getMessage message}
     * and its {@linkplain Throwable#getLocalizedMessage localized message}.
     */
    public static Said by(Throwable failure) {
        return failure instanceof Failure ours
                ? ours.said()
                : new Said(String.valueOf(failure.getMessage()), String.valueOf(failure.getLocalizedMessage()));
    }

    /** Returns it in the language spoken now, to be a part of what is said: in English what is kept, else what is shown. */
    public String text() {
        return Language.current().getLanguage().equals(Locale.ENGLISH.getLanguage()) ? kept : shown;
    }
}
