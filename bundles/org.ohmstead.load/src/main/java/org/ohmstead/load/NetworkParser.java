// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.load;

import java.util.ArrayList;
import java.util.List;
import org.ohmstead.units.text.Messages;

/** Descends through the notation of {@link NetworkNotation}; never deeper than its bound. */
final class NetworkParser {
    private static final Messages TEXTS = Messages.of(NetworkParser.class);

    private static final char PARALLEL_SIGN = '\u2225';

    private final String text;
    private final OperandReader operands;
    private int at;

    NetworkParser(String text, OperandReader operands) {
        this.text = text;
        this.operands = operands;
    }

    Network parse() throws NotationException {
        if (text.length() > NetworkNotation.LONGEST) {
            throw fault(
                    NetworkNotation.LONGEST,
                    TEXTS.text(
                            "network.long", Integer.toString(text.length()), Integer.toString(NetworkNotation.LONGEST)),
                    TEXTS.text("network.longRemedy"));
        }
        skipSpaces();
        if (at == text.length()) {
            throw fault(at, TEXTS.text("network.none"), TEXTS.text("network.noneRemedy"));
        }
        Network network = series(0);
        if (at < text.length()) {
            throw leftOver();
        }
        return network;
    }

    private Network series(int depth) throws NotationException {
        List<Network> members = new ArrayList<>();
        members.add(parallel(depth));
        while (at < text.length() && text.charAt(at) == '+') {
            at++;
            members.add(parallel(depth));
        }
        return Network.series(members);
    }

    private Network parallel(int depth) throws NotationException {
        List<Network> members = new ArrayList<>();
        members.add(primary(depth));
        while (at < text.length() && (text.charAt(at) == '|' || text.charAt(at) == PARALLEL_SIGN)) {
            if (text.charAt(at) == '|') {
                if (at + 1 == text.length() || text.charAt(at + 1) != '|') {
                    throw fault(at, TEXTS.text("network.bar"), TEXTS.text("network.barRemedy"));
                }
                at++;
            }
            at++;
            members.add(primary(depth));
        }
        return Network.parallel(members);
    }

    private Network primary(int depth) throws NotationException {
        skipSpaces();
        if (at == text.length()) {
            throw fault(at, TEXTS.text("network.end"), TEXTS.text("network.endRemedy"));
        }
        char letter = text.charAt(at);
        if (letter == '(') {
            return bracketed(depth);
        }
        if (letter == '+' || letter == '|' || letter == ')' || letter == PARALLEL_SIGN) {
            throw fault(at, TEXTS.text("network.before", letter), TEXTS.text("network.beforeRemedy", letter));
        }
        int end = operands.end(at);
        Network operand = Network.of(operands.read(at, end));
        at = end;
        skipSpaces();
        return operand;
    }

    private Network bracketed(int depth) throws NotationException {
        int opened = at;
        if (depth == NetworkNotation.DEEPEST) {
            throw fault(
                    at,
                    TEXTS.text("network.deep", Integer.toString(NetworkNotation.DEEPEST)),
                    TEXTS.text("network.deepRemedy"));
        }
        at++;
        skipSpaces();
        if (at == text.length()) {
            throw unclosed(opened);
        }
        Network inner = series(depth + 1);
        if (at == text.length()) {
            throw unclosed(opened);
        }
        if (text.charAt(at) != ')') {
            throw leftOver();
        }
        at++;
        skipSpaces();
        return inner;
    }

    private NotationException unclosed(int opened) {
        return fault(opened, TEXTS.text("network.open"), TEXTS.text("network.openRemedy"));
    }

    /** Called where a sign between two operands should stand. */
    private NotationException leftOver() {
        if (text.charAt(at) == ')') {
            return fault(at, TEXTS.text("network.close"), TEXTS.text("network.closeRemedy"));
        }
        return fault(at, TEXTS.text("network.sign"), TEXTS.text("network.signRemedy"));
    }

    private void skipSpaces() {
        while (at < text.length() && Character.isWhitespace(text.charAt(at))) {
            at++;
        }
    }

    private NotationException fault(int position, String problem, String remedy) {
        return new NotationException(text, position, problem, remedy);
    }
}
