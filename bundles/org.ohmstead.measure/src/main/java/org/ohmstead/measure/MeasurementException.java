// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure;

import java.util.function.Supplier;
import org.ohmstead.units.text.Said;

/**
 * A measurement or a bench that failed. The message says what happened, to what, and what to do, in whole sentences.
 *
 * <p>It is both logged and shown. {@link #getMessage} is what the log keeps, in English; {@link #getLocalizedMessage} is what the
 * technician reads. Made by {@link #of} they are in two languages:
 *
 * <pre>{@code
 * throw MeasurementException.of(() -> TEXTS.text("noTone", frequency));
 * }</pre>
 */
public final class MeasurementException extends Exception {
    private static final long serialVersionUID = 1L;

    private final String shown;

    /** Makes an exception with whole sentences for the technician, in English. */
    public MeasurementException(String message) {
        super(message);
        shown = message;
    }

    /** Makes an exception with whole sentences for the technician, in English, and where it comes from. */
    public MeasurementException(String message, Throwable cause) {
        super(message, cause);
        shown = message;
    }

    private MeasurementException(Said sentences, Throwable cause) {
        super(sentences.kept(), cause);
        shown = sentences.shown();
    }

    /**
     * Makes an exception in two languages.
     *
     * @param sentences gives whole sentences for the technician in the language spoken when it is asked; it is asked in English too
     */
    public static MeasurementException of(Supplier<String> sentences) {
        return of(sentences, null);
    }

    /** Makes an exception of whole sentences for the technician, in two languages. */
    public static MeasurementException of(Said sentences) {
        return new MeasurementException(sentences, null);
    }

    /** Makes an exception of whole sentences for the technician, in two languages, and where it comes from. */
    public static MeasurementException of(Said sentences, Throwable cause) {
        return new MeasurementException(sentences, cause);
    }

    /**
     * Makes an exception in two languages.
     *
     * @param sentences gives whole sentences for the technician in the language spoken when it is asked; it is asked in English too
     * @param cause where it comes from; null when nothing caused it
     */
    public static MeasurementException of(Supplier<String> sentences, Throwable cause) {
        return new MeasurementException(Said.of(sentences), cause);
    }

    /** Returns the sentences in the language that was spoken when it was made. */
    @Override
    public String getLocalizedMessage() {
        return shown;
    }
}
