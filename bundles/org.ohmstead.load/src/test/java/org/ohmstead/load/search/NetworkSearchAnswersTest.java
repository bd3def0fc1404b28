// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.load.search;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Duration;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.ohmstead.load.PowerRating;
import org.ohmstead.load.Resistor;
import org.ohmstead.load.Stock;
import org.ohmstead.model.PartTraits;

class NetworkSearchAnswersTest {
    private static final double[] E12 = {1, 1.2, 1.5, 1.8, 2.2, 2.7, 3.3, 3.9, 4.7, 5.6, 6.8, 8.2, 10, 0.47, 22};

    @Test
    void givesTheBestSoFarWhenCancelled() {
        int[] asked = {0};
        SearchResult result =
                NetworkSearch.run(SearchRequest.of(stock(E12, 1), 4.1234567, 8), () -> ++asked[0] > 40, done -> {});
        assertEquals(SearchResult.Ending.CANCELLED, result.ending());
        assertFalse(result.candidates().isEmpty());
        assertTrue(result.exactUpToParts() < 8);
        assertTrue(result.message().startsWith("The search was cancelled."), result.message());
    }

    @Test
    void saysHowFarItCameWhenTheTimeIsOver() {
        SearchResult result =
                search(SearchRequest.of(stock(E12, 2), 4.1234567, 14).withTimeLimit(Duration.ofMillis(200)));
        assertEquals(SearchResult.Ending.TIME_LIMIT, result.ending());
        assertTrue(result.message().startsWith("The time limit of 0.2 s is over."), result.message());
    }

    @Test
    void reportsProgressUpToTheEnd() {
        List<Double> reports = new ArrayList<>();
        NetworkSearch.run(SearchRequest.of(inventory(), 4, 5), () -> false, reports::add);
        assertEquals(reports.stream().sorted().toList(), reports);
        assertEquals(1, reports.get(reports.size() - 1));
    }

    @Test
    void saysWhatToAddWhenNothingIsNearEnough() {
        SearchResult low = search(
                SearchRequest.of(stock(new double[] {3.9}, 1), 4, 3).withErrorLimitRatio(OptionalDouble.of(0.01)));
        assertTrue(low.candidates().isEmpty());
        assertEquals(3.9, low.nearest().orElseThrow().ohms(), 0);
        assertTrue(
                low.message()
                        .endsWith("No network comes within 1 % of 4 ohm. The nearest is 3.9 with 3.9 ohm (-2.5 %)."
                                + " Add a resistor of 0.1 ohm in series with it."),
                low.message());
        SearchResult high =
                search(SearchRequest.of(stock(new double[] {6}, 1), 4, 3).withErrorLimitRatio(OptionalDouble.of(0.01)));
        assertTrue(high.message().endsWith("Add a resistor of 12 ohm in parallel to it."), high.message());
    }

    @Test
    void saysWhatIsMissingWhenThePowerCannotBeReached() {
        PowerRating rating = new PowerRating(50, 25, 250);
        Stock rated = new Stock(
                List.of(new Stock.Item(new Resistor("8R", 8, 0.01, Optional.of(rating), PartTraits.NONE), 2)));
        SearchResult result = search(SearchRequest.of(rated, 4, 2)
                .withErrorLimitRatio(OptionalDouble.of(0.01))
                .withPowerWatts(OptionalDouble.of(200)));
        assertTrue(result.candidates().isEmpty());
        assertTrue(
                result.message().contains("No network near enough takes 200 W. The strongest is 8R||8R with 100 W"),
                result.message());
        SearchResult unrated =
                search(SearchRequest.of(stock(new double[] {4}, 1), 4, 1).withPowerWatts(OptionalDouble.of(1)));
        assertTrue(unrated.message().contains("without a power rating"), unrated.message());
    }

    @Test
    void answersAnEmptyStock() {
        SearchResult result = search(SearchRequest.of(Stock.EMPTY, 4, 3));
        assertTrue(result.candidates().isEmpty());
        assertTrue(result.nearest().isEmpty());
        assertEquals("The stock holds no resistors; enter those at hand first.", result.message());
    }

    @Test
    void rejectsBadArguments() {
        SearchRequest request = SearchRequest.of(inventory(), 4, 3);
        assertThrows(IllegalArgumentException.class, () -> SearchRequest.of(inventory(), 0, 3));
        assertThrows(IllegalArgumentException.class, () -> SearchRequest.of(inventory(), -4, 3));
        assertThrows(IllegalArgumentException.class, () -> SearchRequest.of(inventory(), 4, 0));
        assertThrows(IllegalArgumentException.class, () -> SearchRequest.of(null, 4, 3));
        assertThrows(IllegalArgumentException.class, () -> request.withErrorLimitRatio(OptionalDouble.of(-0.1)));
        assertThrows(IllegalArgumentException.class, () -> request.withPowerWatts(OptionalDouble.of(0)));
        assertThrows(IllegalArgumentException.class, () -> request.withBandHz(OptionalDouble.of(Double.NaN)));
        assertThrows(IllegalArgumentException.class, () -> request.withTimeLimit(Duration.ZERO));
        assertThrows(IllegalArgumentException.class, () -> request.withRanking(0, 1));
        assertThrows(IllegalArgumentException.class, () -> NetworkSearch.run(null, () -> false, done -> {}));
    }

    private static Stock inventory() {
        return stock(new double[] {1, 2.2, 4.7, 8.2, 10}, 1);
    }

    private static Stock stock(double[] ohms, int count) {
        return new Stock(Arrays.stream(ohms)
                .mapToObj(value -> new Stock.Item(Resistor.of(Double.toString(value), value, 0.01), count))
                .toList());
    }

    private static SearchResult search(SearchRequest request) {
        return NetworkSearch.run(request, () -> false, done -> {});
    }
}
