// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.load;

import java.util.ArrayList;
import java.util.List;

/** Descends through the notation of {@link NetworkNotation}; never deeper than its bound. */
final class NetworkParser {
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
                    "The network is " + text.length() + " characters long; at most " + NetworkNotation.LONGEST
                            + " are read.",
                    "Write a smaller network.");
        }
        skipSpaces();
        if (at == text.length()) {
            throw fault(at, "There is no network here.", "Write one such as 8R2||8R2.");
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
                    throw fault(at, "A single \"|\" means nothing.", "Write || for parallel.");
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
            throw fault(
                    at,
                    "Something is missing at the end.",
                    "Write a part or a value there, such as 8R2, or take the sign before it away.");
        }
        char letter = text.charAt(at);
        if (letter == '(') {
            return bracketed(depth);
        }
        if (letter == '+' || letter == '|' || letter == ')' || letter == PARALLEL_SIGN) {
            throw fault(
                    at,
                    "A part or a value is missing before \"" + letter + "\".",
                    "Write one there, such as 8R2, or take the \"" + letter + "\" away.");
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
                    "More than " + NetworkNotation.DEEPEST + " brackets lie in one another here.",
                    "Write the network with fewer brackets; those around a single part can go.");
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
        return fault(
                opened, "This bracket is never closed.", "Write \")\" where its group ends, or take the \"(\" away.");
    }

    /** Called where a sign between two operands should stand. */
    private NotationException leftOver() {
        if (text.charAt(at) == ')') {
            return fault(
                    at,
                    "This \")\" has no \"(\" before it.",
                    "Take it away, or write the \"(\" where its group begins.");
        }
        return fault(at, "Between two parts a sign is missing.", "Write + for series or || for parallel here.");
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
