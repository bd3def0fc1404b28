// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.model.json.internal;

import com.fasterxml.jackson.core.io.NumberOutput;
import com.fasterxml.jackson.databind.JsonNode;
import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.Arrays;
import java.util.Iterator;
import java.util.Locale;

/** Writes the JSON Canonicalization Scheme of RFC 8785. */
public final class CanonicalWriter {
    private static final int USUAL_LENGTH = 2048;
    private static final int MOST_DIGITS_BEFORE_POINT = 21;
    private static final int TOO_FAR_BEHIND_POINT = -6;

    private CanonicalWriter() {}

    /** Returns the canonical text of a value. */
    public static String write(JsonNode node) {
        StringBuilder out = new StringBuilder(USUAL_LENGTH);
        append(node, out);
        return out.toString();
    }

    private static void append(JsonNode node, StringBuilder out) {
        switch (node.getNodeType()) {
            case OBJECT -> appendObject(node, out);
            case ARRAY -> appendList(node, out);
            case STRING -> appendText(node.textValue(), out);
            case NUMBER -> appendNumber(node.doubleValue(), out);
            case BOOLEAN -> out.append(node.booleanValue());
            case NULL -> out.append("null");
            default ->
                throw new IllegalArgumentException(
                        "node is of type " + node.getNodeType() + "; only values of JSON have a canonical text");
        }
    }

    private static void appendObject(JsonNode object, StringBuilder out) {
        String[] names = new String[object.size()];
        int count = 0;
        for (Iterator<String> each = object.fieldNames(); each.hasNext(); ) {
            names[count++] = each.next();
        }
        Arrays.sort(names);
        out.append('{');
        for (int at = 0; at < count; at++) {
            if (at > 0) {
                out.append(',');
            }
            appendText(names[at], out);
            out.append(':');
            append(object.get(names[at]), out);
        }
        out.append('}');
    }

    private static void appendList(JsonNode list, StringBuilder out) {
        out.append('[');
        for (Iterator<JsonNode> entries = list.elements(); entries.hasNext(); ) {
            append(entries.next(), out);
            if (entries.hasNext()) {
                out.append(',');
            }
        }
        out.append(']');
    }

    static void appendText(String text, StringBuilder out) {
        out.append('"');
        if (isPlain(text)) {
            out.append(text).append('"');
            return;
        }
        for (int at = 0; at < text.length(); at += Character.charCount(text.codePointAt(at))) {
            int codePoint = text.codePointAt(at);
            if (codePoint >= Character.MIN_SURROGATE && codePoint <= Character.MAX_SURROGATE) {
                throw new IllegalArgumentException(
                        "text holds half of a surrogate pair at " + at + ", which has no form in UTF-8");
            }
            appendCharacter(codePoint, out);
        }
        out.append('"');
    }

    /** Nearly all texts are: they can be written as they are. */
    private static boolean isPlain(String text) {
        for (int at = 0; at < text.length(); at++) {
            char each = text.charAt(at);
            if (each < ' ' || each == '"' || each == '\\' || Character.isSurrogate(each)) {
                return false;
            }
        }
        return true;
    }

    private static void appendCharacter(int codePoint, StringBuilder out) {
        switch (codePoint) {
            case '"' -> out.append("\\\"");
            case '\\' -> out.append("\\\\");
            case '\b' -> out.append("\\b");
            case '\t' -> out.append("\\t");
            case '\n' -> out.append("\\n");
            case '\f' -> out.append("\\f");
            case '\r' -> out.append("\\r");
            default -> {
                if (codePoint < ' ') {
                    out.append(String.format(Locale.ROOT, "\\u%04x", codePoint));
                } else {
                    out.appendCodePoint(codePoint);
                }
            }
        }
    }

    /** Appends a number as {@link #number} returns it. */
    static void appendNumber(double value, StringBuilder out) {
        int whole = (int) value;
        if (whole == value) {
            out.append(whole);
        } else {
            out.append(number(value));
        }
    }

    /** Returns a double as ECMAScript writes it (ECMA-262, Number::toString, radix 10), which RFC 8785 section 3.2.2.3 asks for. */
    static String number(double value) {
        if (!Double.isFinite(value)) {
            throw new IllegalArgumentException("number is " + value + "; JSON has finite numbers only");
        }
        if (value == 0) {
            return "0";
        }
        String plain = NumberOutput.toString(value, true);
        if (isShortest(plain)) {
            return plain.endsWith(".0") ? plain.substring(0, plain.length() - 2) : plain;
        }
        BigDecimal shortest = shortest(Math.abs(value));
        String digits = shortest.unscaledValue().toString();
        int pointAt = digits.length() - shortest.scale();
        String sign = value < 0 ? "-" : "";
        if (pointAt > MOST_DIGITS_BEFORE_POINT || pointAt <= TOO_FAR_BEHIND_POINT) {
            String fraction = digits.length() > 1 ? "." + digits.substring(1) : "";
            String exponentSign = pointAt > 0 ? "+" : "-";
            return sign + digits.charAt(0) + fraction + "e" + exponentSign + Math.abs(pointAt - 1);
        }
        return sign + shortest.toPlainString();
    }

    /** Returns whether the library's text, as far as it goes without an exponent, has the fewest digits: only of two there may be one. */
    private static boolean isShortest(String text) {
        int digits = 0;
        int zeros = 0;
        for (int at = 0; at < text.length(); at++) {
            char each = text.charAt(at);
            if (each == '0') {
                zeros += digits > 0 ? 1 : 0;
            } else if (each >= '1' && each <= '9') {
                digits += 1 + zeros;
                zeros = 0;
            } else if (each != '.' && each != '-') {
                return false;
            }
        }
        return digits != 2;
    }

    /**
     * Returns the decimal number with the fewest digits that reads back to a value, and among these the closest. The library's text
     * has at least two digits, as the Java platform's own; so a single digit that will do is looked for here.
     */
    private static BigDecimal shortest(double value) {
        BigDecimal decimal = new BigDecimal(NumberOutput.toString(value, true)).stripTrailingZeros();
        if (decimal.precision() != 2) {
            return decimal;
        }
        BigDecimal below = decimal.round(new MathContext(1, RoundingMode.DOWN));
        BigDecimal above = decimal.round(new MathContext(1, RoundingMode.UP)).stripTrailingZeros();
        boolean belowFits = below.signum() > 0 && below.doubleValue() == value;
        boolean aboveFits = above.doubleValue() == value;
        if (!belowFits && !aboveFits) {
            return decimal;
        }
        BigDecimal exact = new BigDecimal(value);
        boolean aboveCloser =
                above.subtract(exact).abs().compareTo(exact.subtract(below).abs()) < 0;
        return aboveFits && (aboveCloser || !belowFits) ? above : below;
    }
}
