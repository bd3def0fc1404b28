// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.history;

import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import org.ohmstead.history.internal.Words;
import org.ohmstead.model.EndPoint;
import org.ohmstead.model.Mode;
import org.ohmstead.model.PowerKind;
import org.ohmstead.units.text.Messages;

/**
 * Under what amplifiers are compared.
 *
 * @param supplyVolts direct volts at the amplifier's terminals, above 0
 * @param loadOhms the load in ohms, above 0
 * @param mode how the channels meet it
 * @param kind steady tone or burst
 * @param endPoint what ends the search for power; empty for the one that most of the compared have
 * @param frequencyHz of the tone in hertz, above 0; empty likewise
 * @param confidence of intervals and of the statement whether a difference is real, strictly between 0 and 1
 */
public record ComparisonRequest(
        double supplyVolts,
        double loadOhms,
        Mode mode,
        PowerKind kind,
        Optional<EndPoint> endPoint,
        OptionalDouble frequencyHz,
        double confidence) {
    private static final Messages TEXTS = Messages.of(ComparisonRequest.class);

    /** Checks the ranges given above. */
    public ComparisonRequest {
        positive(supplyVolts, "supplyVolts");
        positive(loadOhms, "loadOhms");
        Objects.requireNonNull(mode, "mode");
        Objects.requireNonNull(kind, "kind");
        Objects.requireNonNull(endPoint, "endPoint");
        frequencyHz.ifPresent(value -> positive(value, "frequencyHz"));
        if (!(confidence > 0 && confidence < 1)) {
            throw new IllegalArgumentException(
                    "confidence is " + confidence + "; it must lie strictly between 0 and 1");
        }
    }

    /** Returns a request for steady tones and 95 %, to the end point and at the frequency that most have. */
    public static ComparisonRequest at(double supplyVolts, double loadOhms, Mode mode) {
        return new ComparisonRequest(
                supplyVolts, loadOhms, mode, PowerKind.CONTINUOUS, Optional.empty(), OptionalDouble.empty(), 0.95);
    }

    private static void positive(double value, String name) {
        if (!Double.isFinite(value) || value <= 0) {
            throw new IllegalArgumentException(name + " is " + value + "; it must be a finite number above 0");
        }
    }

    /** Returns it in words: "14.4 V, stereo into 4 ohm, steady tone". */
    public String words() {
        return TEXTS.text(
                "request." + kind.name(),
                Words.quantity(supplyVolts, "V"),
                Words.mode(mode),
                Words.quantity(loadOhms, Words.ohm()));
    }
}
