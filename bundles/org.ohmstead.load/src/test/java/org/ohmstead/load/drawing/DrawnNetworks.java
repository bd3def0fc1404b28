// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.load.drawing;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.ohmstead.load.Network;
import org.ohmstead.load.NetworkNotation;
import org.ohmstead.load.NotationException;
import org.ohmstead.load.Resistor;
import org.ohmstead.load.Stock;

/** Networks for the tests of drawings. */
final class DrawnNetworks {
    private DrawnNetworks() {}

    static Network read(String text) {
        try {
            return NetworkNotation.parse(text, Stock.EMPTY);
        } catch (NotationException wrong) {
            throw new AssertionError(wrong);
        }
    }

    /** Returns a network of so many resistors with long and short ids. */
    static Network next(Random random, int pieces) {
        return next(random, pieces, random.nextBoolean());
    }

    private static Network next(Random random, int pieces, boolean series) {
        if (pieces == 1) {
            String id = "R" + "wirewound on the left heat sink".substring(0, random.nextInt(30)) + random.nextInt(1000);
            return Network.of(Resistor.of(id, Math.exp(random.nextDouble() * 8 - 4), 0.05));
        }
        List<Network> members = new ArrayList<>();
        int left = pieces;
        while (left > 0) {
            int size = members.isEmpty() ? 1 + random.nextInt(pieces - 1) : 1 + random.nextInt(left);
            members.add(next(random, size, !series));
            left -= size;
        }
        return series ? Network.series(members) : Network.parallel(members);
    }
}
