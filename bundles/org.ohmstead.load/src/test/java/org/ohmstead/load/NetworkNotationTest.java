// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.load;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Random;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class NetworkNotationTest {
    private static final double EXACT = 1e-12;

    private static Stock stock(String... ids) {
        return new Stock(List.of(ids).stream()
                .map(id -> new Stock.Item(Resistor.of(id, 100 + id.hashCode() % 50, 0.05), 2))
                .toList());
    }

    private static NotationException fault(String text, Stock stock) {
        NotationException fault = assertThrows(NotationException.class, () -> NetworkNotation.parse(text, stock));
        assertEquals(
                "Character " + (fault.position() + 1) + ": " + fault.problem() + " " + fault.remedy(),
                fault.getMessage());
        assertTrue(fault.problem().matches("[A-Z\"].*\\."), fault.problem());
        assertTrue(fault.remedy().matches("[A-Z].*\\."), fault.remedy());
        return fault;
    }

    @ParameterizedTest
    @CsvSource({
        // Values by hand from the laws of series and parallel connection.
        "8R2, 8.2",
        "0R47, 0.47",
        "R47, 0.47",
        "4.7, 4.7",
        ".5, 0.5",
        "1k, 1000",
        "4K7, 4700",
        "1M, 1000000",
        "8R2J, 8.2",
        "10K, 10000",
        "10RK, 10",
        "10J, 10",
        "4R7M@50W, 4.7",
        "4\u03a97, 4.7",
        "8R||8R, 4",
        "8R\u22258R, 4",
        "4+8||8, 8",
        "(4+8)||12, 6",
        " ( 4 + 8 ) || 12 , 6",
        "((((5))))+1, 6",
        "1+2+3||6, 5"
    })
    void readsValuesAndBindsParallelTighterThanSeries(String text, double ohms) throws NotationException {
        assertEquals(ohms, NetworkNotation.parse(text, Stock.EMPTY).ohms(), EXACT * ohms);
    }

    @Test
    void readsTheExampleOfTheTrade() throws NotationException {
        Network network = NetworkNotation.parse("(8R2||8R2||15)+(3R3||0R47)", Stock.EMPTY);
        assertEquals(1 / (2 / 8.2 + 1 / 15.0) + 3.3 * 0.47 / 3.77, network.ohms(), EXACT * 4);
        assertEquals("8R2||8R2||15+3R3||0R47", NetworkNotation.format(network));
    }

    @Test
    void readsToleranceAndRating() throws NotationException {
        Resistor resistor =
                NetworkNotation.parse("8R2G@50W", Stock.EMPTY).resistors().get(0);
        assertEquals(0.02, resistor.toleranceRatio(), EXACT);
        assertEquals(new PowerRating(50, 25, 250), resistor.rating().orElseThrow());
        Resistor plain = NetworkNotation.parse(
                        "8R2", Stock.EMPTY, NetworkNotation.Options.USUAL.withToleranceRatio(0.1))
                .resistors()
                .get(0);
        assertEquals(0.1, plain.toleranceRatio(), EXACT);
        assertTrue(plain.rating().isEmpty());
    }

    @Test
    void prefersAnIdToAValueAndReadsTheWholeWord() throws NotationException {
        Stock stock = stock("8R", "8R-250W", "a b+c", "10", "q\"q");
        assertEquals("8R-250W", idOf("8R-250W", stock));
        assertEquals("8R", idOf("8R", stock));
        assertEquals("10", idOf("10", stock));
        assertEquals("a b+c", idOf("\"a b+c\"", stock));
        assertEquals("q\"q", idOf("\"q\"\"q\"", stock));
    }

    private static String idOf(String text, Stock stock) throws NotationException {
        return NetworkNotation.parse(text, stock).resistors().get(0).id();
    }

    @Test
    void letsABareValueStandForTheOnlyPartThatHasIt() throws NotationException {
        Stock stock = new Stock(List.of(
                new Stock.Item(Resistor.of("8R-250W", 8, 0.01), 2),
                new Stock.Item(Resistor.of("4R-a", 4, 0.01), 1),
                new Stock.Item(Resistor.of("4R-b", 4, 0.01), 1)));
        assertEquals("8R-250W||8R-250W", NetworkNotation.format(NetworkNotation.parse("8R||8", stock)));
        assertEquals("8RJ", idOf("8RJ", stock));
        NotationException several = fault("8R||4", stock);
        assertEquals(4, several.position());
        assertTrue(several.remedy().contains("\"4R-a\" or \"4R-b\""), several.remedy());
        NetworkNotation.Options alone = NetworkNotation.Options.USUAL.withValuesFromStock(false);
        assertEquals("4||8R", NetworkNotation.format(NetworkNotation.parse("4||8R", stock, alone)));
    }

    @Test
    void countsPiecesUnlessToldNotTo() throws NotationException {
        Stock stock = stock("8R2", "15R");
        NotationException fault = fault("8R2||15R||8R2||8R2", stock);
        assertEquals(15, fault.position());
        assertEquals("This is piece 3 of \"8R2\", but the stock has 2.", fault.problem());
        Network network = NetworkNotation.parse(
                "8R2||15R||8R2||8R2", stock, NetworkNotation.Options.USUAL.withCountsChecked(false));
        assertEquals(4, network.resistors().size());
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = ';',
            quoteCharacter = '~',
            value = {
                "~~; 0; There is no network here.; 8R2",
                "~   ~; 3; There is no network here.; 8R2",
                "(8R2||15; 0; This bracket is never closed.; ~\")\"~",
                "8R2||(15+(3; 9; This bracket is never closed.; ~\")\"~",
                "((3)+4; 0; This bracket is never closed.; ~\")\"~",
                "(; 0; This bracket is never closed.; ~\")\"~",
                "8R2)+15; 3; This \")\" has no \"(\" before it.; Take it away",
                "(8R2+); 5; A part or a value is missing before \")\".; such as 8R2",
                "(); 1; A part or a value is missing before \")\".; such as 8R2",
                "8R2+; 4; Something is missing at the end.; such as 8R2",
                "8R2||; 5; Something is missing at the end.; such as 8R2",
                "+8R2; 0; A part or a value is missing before \"+\".; such as 8R2",
                "8R2++15; 4; A part or a value is missing before \"+\".; such as 8R2",
                "8R2|||15; 5; A part or a value is missing before \"|\".; such as 8R2",
                "8R2|15; 3; A single \"|\" means nothing.; ||",
                "8R2 15; 4; Between two parts a sign is missing.; ||",
                "(8R2)15; 5; Between two parts a sign is missing.; ||",
                "8R2(15); 3; Between two parts a sign is missing.; ||",
                "15+0; 3; A resistance of 0 ohm short-circuits what it lies across.; above 0",
                "15+0R00; 3; A resistance of 0 ohm short-circuits what it lies across.; above 0",
                "-8R2; 0; A resistance cannot be negative.; as 8R2",
                "15||-3; 4; A resistance cannot be negative.; as 3",
                "8R2,5; 3; \",\" does not belong here.; point or a letter",
                "470m; 3; \"m\" does not belong here.; 0R47",
                "8R2*2; 3; \"*\" does not belong here.; such as 8R2",
                "8R2//15; 3; \"/\" does not belong here.; such as 8R2",
                "1e3; 1; \"e\" does not belong here.; such as 8R2",
                "8R2@W; 4; After @ comes the rated power in watts, above 0.; @50W",
                "8R2@0W; 4; After @ comes the rated power in watts, above 0.; @50W",
                "8R2@50WW; 7; \"W\" does not belong here.; @50W",
                "~\"ab~; 0; This quote is never closed.; second",
                "~\"ab\"~; 0; The stock has no part \"ab\".; value such as 8R2",
                "Rx; 0; The stock has no part \"Rx\".; value such as 8R2",
                "[8R2]; 0; The stock has no part \"[8R2]\".; value such as 8R2"
            })
    void saysWhereAndWhatInstead(String text, int position, String problem, String remedyHolds) {
        NotationException fault = fault(text, Stock.EMPTY);
        assertEquals(problem, fault.problem());
        assertEquals(position, fault.position());
        assertTrue(fault.remedy().contains(remedyHolds), fault.remedy());
    }

    @Test
    void suggestsTheNearestId() {
        Stock stock = stock("8R-250W", "4R-300W", "shunt");
        NotationException fault = fault("4R-300W+8R-260W", stock);
        assertEquals(8, fault.position());
        assertTrue(fault.remedy().startsWith("Did you mean \"8R-250W\"?"), fault.remedy());
        assertTrue(fault("Shnt", stock).remedy().startsWith("Did you mean \"shunt\"?"));
        assertTrue(fault("banana", stock).remedy().contains("\"8R-250W\" or \"4R-300W\" or \"shunt\""));
        assertTrue(fault("0", stock("1")).problem().startsWith("A resistance of 0 ohm"));
    }

    @Test
    void pointsAtTheCharacter() {
        assertEquals("8R2||(15+3\n     ^", fault("8R2||(15+3", Stock.EMPTY).pointer());
        assertEquals("8R2 ||  \n        ^", fault("8R2\n||\t ", Stock.EMPTY).pointer());
        String longText = "8R2+".repeat(100) + "+" + "8R2+".repeat(100);
        NotationException fault = fault(longText, Stock.EMPTY);
        String[] lines = fault.pointer().split("\n");
        assertEquals('+', lines[0].charAt(lines[1].indexOf('^')));
        assertTrue(lines[0].length() < 90);
        assertTrue(lines[0].startsWith("...") && lines[0].endsWith("..."));
    }

    @Test
    void boundsDepthAndLength() throws NotationException {
        String deepest = "(".repeat(NetworkNotation.DEEPEST) + "5" + ")".repeat(NetworkNotation.DEEPEST);
        assertEquals(5, NetworkNotation.parse(deepest, Stock.EMPTY).ohms(), EXACT);
        NotationException deep = fault("(".repeat(9_000) + "5" + ")".repeat(9_000), Stock.EMPTY);
        assertEquals(NetworkNotation.DEEPEST, deep.position());
        NotationException longer = fault("5+".repeat(1_000_000), Stock.EMPTY);
        assertEquals(NetworkNotation.LONGEST, longer.position());
        assertTrue(fault("9".repeat(400), Stock.EMPTY).problem().contains("400 digits"));
        int most = NetworkNotation.LONGEST / 2;
        String wide = "5+".repeat(most - 1) + "55";
        assertEquals(
                5 * (most - 1) + 55, NetworkNotation.parse(wide, Stock.EMPTY).ohms(), 1e-6);
    }

    @Test
    void readsBackEveryRandomNetworkItWrites() throws NotationException {
        Random random = new Random(3);
        String[] names = {"8R2", "8R-250W", "a b", "x+y", "(z)", "q\"", "||", "\u03a9", "10", "shunt@x"};
        for (int trial = 0; trial < 500; trial++) {
            Network network = RandomNetworks.mapped(
                    RandomNetworks.next(random, 1 + random.nextInt(12)),
                    resistor -> Resistor.of(names[random.nextInt(names.length)], 7, 0.05));
            Stock stock = new Stock(network.resistors().stream()
                    .collect(Collectors.groupingBy(resistor -> resistor, Collectors.counting()))
                    .entrySet()
                    .stream()
                    .map(entry ->
                            new Stock.Item(entry.getKey(), entry.getValue().intValue()))
                    .toList());
            String written = NetworkNotation.format(network);
            assertEquals(network, NetworkNotation.parse(written, stock), written);
            // Fewest brackets: only a series inside a parallel connection needs them.
            long brackets = written.replaceAll("\"[^\"]*\"", "")
                    .chars()
                    .filter(letter -> letter == '(')
                    .count();
            assertEquals(seriesInParallel(network), brackets, written);
        }
    }

    private static long seriesInParallel(Network network) {
        if (network instanceof Network.Single) {
            return 0;
        }
        long count = 0;
        for (Network member : NetworkAnalysis.members(network)) {
            count += seriesInParallel(member);
            if (network instanceof Network.Parallel && member instanceof Network.Series) {
                count++;
            }
        }
        return count;
    }

    @Test
    void neverFailsOtherwiseThanByASentence() {
        Random random = new Random(11);
        String letters = "8R2+|()@WxkKMJ.,\"-0 15\u2225\u03a9";
        Stock stock = stock("8R2", "5");
        int readable = 0;
        for (int trial = 0; trial < 5_000; trial++) {
            StringBuilder text = new StringBuilder();
            for (int i = random.nextInt(12); i >= 0; i--) {
                text.append(letters.charAt(random.nextInt(letters.length())));
            }
            try {
                assertTrue(NetworkNotation.parse(text.toString(), stock).ohms() > 0);
                readable++;
            } catch (NotationException fault) {
                assertFalse(fault.remedy().isBlank());
                assertTrue(fault.position() >= 0 && fault.position() <= text.length());
            }
        }
        assertTrue(readable > 30, "readable: " + readable);
    }
}
