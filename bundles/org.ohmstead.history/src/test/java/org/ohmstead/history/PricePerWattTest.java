// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.history;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.ohmstead.metrology.Estimate;
import org.ohmstead.model.Mode;
import org.ohmstead.model.Price;
import org.ohmstead.model.Specimen;
import org.ohmstead.plot.Plot;

class PricePerWattTest {
    private static final Price PRICE = new Price(480, "EUR", LocalDate.of(2019, 6, 15));

    private static SubjectPower power(int channels, Optional<Price> price) {
        return new SubjectPower(
                new Subject("A", "kestrel", new Specimen("A", "", ""), Period.ALWAYS, List.of(), price, channels),
                "A",
                Estimate.of(60, 0.6),
                List.of(),
                SubjectPower.Origin.DIRECT,
                1);
    }

    @ParameterizedTest
    @CsvSource({"STEREO, 4, 2", "BRIDGED, 4, 4", "SINGLE, 4, 8", "STEREO, 2, 4", "BRIDGED, 3, 8"})
    void isThePriceOverThePowerOfAllOutputs(Mode mode, int channels, double perWatt) {
        PricePerWatt found =
                PricePerWatt.of(power(channels, Optional.of(PRICE)), mode).orElseThrow();
        // Closed form: 480 EUR over outputs times 60 W, with the relative uncertainty of the power.
        assertEquals(perWatt, found.perWatt().value(), 1e-12);
        assertEquals(0.01 * perWatt, found.perWatt().standardUncertainty(), 1e-12);
        assertTrue(found.adjustedAmount().isEmpty());
    }

    @Test
    void isNotKnownWithoutPriceOrChannels() {
        assertTrue(PricePerWatt.of(power(4, Optional.empty()), Mode.STEREO).isEmpty());
        assertTrue(PricePerWatt.of(power(0, Optional.of(PRICE)), Mode.STEREO).isEmpty());
        assertTrue(PricePerWatt.of(power(1, Optional.of(PRICE)), Mode.BRIDGED).isEmpty());
    }

    @Test
    void isBroughtToTheMoneyOfAnotherYear() throws HistoryException {
        PriceIndex index = PriceIndex.parse("cpi.csv", "period,index\n2019,80\n2026,100\n");
        PricePerWatt found = PricePerWatt.of(power(4, Optional.of(PRICE)), Mode.STEREO)
                .orElseThrow()
                .adjusted(index, "2026");
        // Closed form: 480 x 100/80 = 600 EUR, over 240 W = 2.5 EUR/W.
        assertEquals(2.5, found.adjustedPerWatt().orElseThrow().value(), 1e-12);
        assertEquals(0.025, found.adjustedPerWatt().orElseThrow().standardUncertainty(), 1e-12);
        assertEquals(600, found.adjustedAmount().orElseThrow(), 1e-9);
        assertEquals(
                "A cost 480 EUR on 2019-06-15, that is 2 EUR/W for 4 x 60 W, or 2.5 EUR/W in the money of 2026.",
                found.sentence());
        Plot plot = HistoryPlots.prices(List.of(found), 0.95).orElseThrow();
        assertEquals(2, plot.series().size());
        assertEquals(2.5, plot.series().get(1).points().get(0).y(), 1e-12);
        // k = 1.96 for 95 % of a normal distribution.
        assertEquals(
                OptionalDouble.of(1.959964 * 0.025).getAsDouble(),
                plot.series().get(1).points().get(0).barHalfLength().orElseThrow(),
                1e-7);
    }

    @Test
    void doesNotPlotSeveralCurrenciesBesideEachOther() {
        PricePerWatt euros =
                PricePerWatt.of(power(4, Optional.of(PRICE)), Mode.STEREO).orElseThrow();
        PricePerWatt crowns = PricePerWatt.of(power(4, Optional.of(PRICE.withCurrency("CZK"))), Mode.STEREO)
                .orElseThrow();
        assertThrows(IllegalArgumentException.class, () -> HistoryPlots.prices(List.of(euros, crowns), 0.95));
        assertTrue(HistoryPlots.prices(List.of(), 0.95).isEmpty());
    }
}
