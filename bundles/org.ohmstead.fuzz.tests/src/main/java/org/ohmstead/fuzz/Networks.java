// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.fuzz;

import java.util.List;
import java.util.OptionalDouble;
import org.ohmstead.load.Network;
import org.ohmstead.load.NetworkAnalysis;
import org.ohmstead.load.NetworkNotation;
import org.ohmstead.load.NotationException;
import org.ohmstead.load.Resistor;
import org.ohmstead.load.ResistorCode;
import org.ohmstead.load.Stock;
import org.ohmstead.load.StockNotation;
import org.ohmstead.load.drawing.NetworkDrawing;
import org.ohmstead.load.drawing.NetworkSvg;
import org.ohmstead.load.drawing.WiringList;

/** A load network, a stock in one line or the marking of a resistor. A network that was read and is written must be read as the same. */
public final class Networks {
    private static final double SHARE_RATIO = 1e-9;
    private static final int DRAWN = 40;
    private static final double AMBIENT_CELSIUS = 25;
    private static final Stock STOCK = new Stock(List.of(
            new Stock.Item(Resistor.of("R1", 8.2, 0.05), 3),
            new Stock.Item(Resistor.of("R 2", 15, 0.01), 1),
            new Stock.Item(Resistor.of("a+\"b\"", 3.3, 0.1), 2),
            new Stock.Item(Resistor.of("4R7", 4.7, 0.05), 10_000)));

    private Networks() {}

    /** Reads any bytes as each of them. */
    public static void fuzzerTestOneInput(byte[] input) {
        Bounds.hold(() -> read(input));
    }

    private static void read(byte[] input) {
        String text = Demand.text(input);
        network(text, Stock.EMPTY);
        network(text, STOCK);
        stock(text);
        marking(text);
    }

    private static void network(String text, Stock stock) {
        Network network;
        try {
            network = NetworkNotation.parse(text, stock);
        } catch (NotationException e) {
            refused(e, text);
            return;
        }
        String written = NetworkNotation.format(network);
        try {
            Demand.that(NetworkNotation.parse(written, stock).equals(network), written + " is another network");
        } catch (NotationException e) {
            if (written.length() <= NetworkNotation.LONGEST) {
                throw new AssertionError("What was written as " + written + " is refused", e);
            }
        }
        analysed(network);
    }

    private static void analysed(Network network) {
        NetworkAnalysis analysis = NetworkAnalysis.of(network, AMBIENT_CELSIUS);
        Demand.close(analysis.ohms(), network.ohms(), SHARE_RATIO, "the resistance");
        double sum = 0;
        for (int i = 0; i < analysis.size(); i++) {
            Demand.that(analysis.share(i) >= 0, "a share is " + analysis.share(i));
            sum += analysis.share(i);
        }
        Demand.close(sum, 1, SHARE_RATIO, "the shares together");
        if (analysis.size() <= DRAWN) {
            NetworkDrawing drawing = NetworkDrawing.of(network, OptionalDouble.of(1));
            NetworkSvg.write(drawing, NetworkSvg.Look.values()[0]);
            Demand.that(!WiringList.of(network, WiringList.Use.of(1)).text().isBlank(), "no wiring list");
        }
    }

    private static void stock(String text) {
        try {
            Stock stock = StockNotation.parse(text, 0.05);
            Demand.that(stock.pieces() > 0, "a stock without a piece");
        } catch (NotationException e) {
            refused(e, text);
        }
    }

    private static void marking(String text) {
        try {
            ResistorCode.Marking marking = ResistorCode.ofLetters(text);
            if (marking.ohms() >= 1e-6 && marking.ohms() <= 1e14) {
                String written = ResistorCode.letters(marking.ohms());
                Demand.close(ResistorCode.ofLetters(written).ohms(), marking.ohms(), SHARE_RATIO, written);
            }
        } catch (NotationException e) {
            refused(e, text);
        }
        try {
            ResistorCode.Marking marking = ResistorCode.ofColours(text);
            Demand.that(marking.ohms() > 0, "rings of " + marking.ohms());
        } catch (NotationException e) {
            refused(e, text);
        }
    }

    private static void refused(NotationException refusal, String text) {
        Demand.said(refusal);
        Demand.that(refusal.position() >= 0 && refusal.position() <= text.length(), "position " + refusal.position());
        Demand.that(!refusal.pointer().isBlank(), "points nowhere");
    }
}
