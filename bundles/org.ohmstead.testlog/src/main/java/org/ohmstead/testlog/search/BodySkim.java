// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog.search;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonToken;
import java.io.IOException;
import java.time.DateTimeException;
import java.time.Instant;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import org.ohmstead.model.EndPointOutcome;
import org.ohmstead.model.Mode;

/**
 * Takes out of the body of a reading or of figures what the index keeps, and passes over the rest. It is meant for bodies whose hash is
 * right, which the log has written; whatever it does not find as it is written there is left to a full reading.
 */
final class BodySkim {
    private static final JsonFactory JSON = new JsonFactory();
    private static final Map<String, Integer> MODES = places(Mode.values());
    private static final Map<String, Integer> OUTCOMES = places(EndPointOutcome.values());

    private static final Set<IndexField> OF_ALL = EnumSet.of(
            IndexField.TAKEN,
            IndexField.MODE,
            IndexField.LOAD,
            IndexField.STEP,
            IndexField.MEASUREMENT,
            IndexField.OPERATOR,
            IndexField.OVERDUE,
            IndexField.SUPPLY);
    private static final Set<IndexField> OF_READINGS = EnumSet.of(
            IndexField.LOAD_OHMS,
            IndexField.STIMULUS,
            IndexField.POWER,
            IndexField.UNCERTAINTY,
            IndexField.THD,
            IndexField.OUTCOME);

    /** A figure of a channel. */
    private static final class Channel {
        private final Map<String, Double> figures = new HashMap<>();
        private String outcome = "";
    }

    private final JsonParser in;
    private final IndexRow row;
    private final Set<IndexField> found = EnumSet.noneOf(IndexField.class);

    private BodySkim(JsonParser in, IndexRow row) {
        this.in = in;
        this.row = row;
    }

    /** The body is not as the log writes it. */
    private static final class OtherwiseException extends IOException {
        private static final long serialVersionUID = 1L;
    }

    /** Something done with the field that the parser has come to, whose value is the current token. */
    private interface FieldTaker {
        void take(String name) throws IOException;
    }

    /** Takes what is kept of a body; returns whether all of it was there. */
    static boolean take(String body, boolean reading, IndexRow row) {
        try (JsonParser in = JSON.createParser(body)) {
            BodySkim skim = new BodySkim(in, row);
            in.nextToken();
            skim.object(skim::field);
            return skim.found.containsAll(OF_ALL) && (!reading || skim.found.containsAll(OF_READINGS));
        } catch (IOException | DateTimeException otherwise) {
            // A full reading says what is wrong with it, if anything is.
            return false;
        }
    }

    private static Map<String, Integer> places(Enum<?>[] values) {
        Map<String, Integer> places = new HashMap<>();
        for (Enum<?> value : values) {
            StringBuilder name = new StringBuilder();
            for (String word : value.name().toLowerCase(Locale.ROOT).split("_")) {
                int first = name.isEmpty() ? word.charAt(0) : Character.toUpperCase(word.charAt(0));
                name.append((char) first).append(word, 1, word.length());
            }
            places.put(name.toString(), value.ordinal());
        }
        return places;
    }

    private void object(FieldTaker taker) throws IOException {
        require(JsonToken.START_OBJECT);
        while (in.nextToken() == JsonToken.FIELD_NAME) {
            String name = in.currentName();
            in.nextToken();
            taker.take(name);
        }
        require(JsonToken.END_OBJECT);
    }

    private void objects(FieldTaker taker, Runnable begin) throws IOException {
        require(JsonToken.START_ARRAY);
        while (in.nextToken() != JsonToken.END_ARRAY) {
            begin.run();
            object(taker);
        }
    }

    private void require(JsonToken token) throws IOException {
        if (in.currentToken() != token) {
            throw new OtherwiseException();
        }
    }

    private String text() throws IOException {
        require(JsonToken.VALUE_STRING);
        return in.getText();
    }

    private double number() throws IOException {
        if (!in.currentToken().isNumeric()) {
            throw new OtherwiseException();
        }
        return in.getDoubleValue();
    }

    private static int place(Map<String, Integer> places, String name) throws IOException {
        Integer place = places.get(name);
        if (place == null) {
            throw new OtherwiseException();
        }
        return place;
    }

    private void value(IndexField field, long value) {
        found.add(field);
        row.value(field, value);
    }

    private void word(IndexField field, String word) {
        found.add(field);
        row.word(field, word);
    }

    private void field(String name) throws IOException {
        switch (name) {
            case "stepId" -> word(IndexField.STEP, text());
            case "loadId" -> word(IndexField.LOAD, text());
            case "mode" -> value(IndexField.MODE, place(MODES, text()));
            case "takenAt" -> value(IndexField.TAKEN, IndexRow.nanos(Instant.parse(text())));
            case "nominalLoadOhms" -> value(IndexField.LOAD_OHMS, IndexField.ofDouble(number()));
            case "supplyVolts" -> value(IndexField.SUPPLY, IndexField.ofDouble(number()));
            case "channels" -> channels();
            case "figures" -> figures();
            case "stimulus" -> stimulus();
            case "provenance" -> object(this::provenance);
            case "notes" -> notes();
            default -> in.skipChildren();
        }
    }

    private void channels() throws IOException {
        List<Channel> channels = new ArrayList<>();
        objects(
                name -> {
                    Channel channel = channels.get(channels.size() - 1);
                    if (in.currentToken().isNumeric()) {
                        channel.figures.put(name, in.getDoubleValue());
                    } else if (name.equals("outcome")) {
                        channel.outcome = text();
                    } else {
                        in.skipChildren();
                    }
                },
                () -> channels.add(new Channel()));
        Channel weakest = null;
        for (Channel channel : channels) {
            if (weakest == null || figure(channel, "powerWatts") < figure(weakest, "powerWatts")) {
                weakest = channel;
            }
        }
        if (weakest == null) {
            throw new OtherwiseException();
        }
        value(IndexField.POWER, IndexField.ofDouble(figure(weakest, "powerWatts")));
        value(IndexField.UNCERTAINTY, IndexField.ofDouble(figure(weakest, "standardUncertaintyWatts")));
        value(IndexField.THD, IndexField.ofDouble(figure(weakest, "thdFRatio")));
        value(IndexField.SUPPLY, IndexField.ofDouble(figure(weakest, "supplyVolts")));
        value(IndexField.OUTCOME, place(OUTCOMES, weakest.outcome));
    }

    private static double figure(Channel channel, String name) throws IOException {
        Double figure = channel.figures.get(name);
        if (figure == null) {
            throw new OtherwiseException();
        }
        return figure;
    }

    private void figures() throws IOException {
        List<IndexRow.Figure> figures = new ArrayList<>();
        String[] id = new String[1];
        Double[] value = new Double[1];
        require(JsonToken.START_ARRAY);
        while (in.nextToken() != JsonToken.END_ARRAY) {
            id[0] = null;
            value[0] = null;
            object(name -> {
                if (name.equals("id")) {
                    id[0] = text();
                } else if (name.equals("value")) {
                    value[0] = number();
                } else {
                    in.skipChildren();
                }
            });
            if (id[0] == null || value[0] == null) {
                throw new OtherwiseException();
            }
            figures.add(new IndexRow.Figure(id[0], value[0]));
        }
        row.figures(figures);
    }

    private void stimulus() throws IOException {
        String[] kind = {""};
        Double[] frequencyHz = new Double[1];
        object(name -> {
            if (name.equals("kind")) {
                kind[0] = text();
            } else if (name.equals("frequencyHz")) {
                frequencyHz[0] = number();
            } else {
                in.skipChildren();
            }
        });
        boolean burst = kind[0].equals("toneBurst");
        if (frequencyHz[0] == null || !burst && !kind[0].equals("continuousSine")) {
            throw new OtherwiseException();
        }
        word(IndexField.STIMULUS, IndexRow.stimulus(burst, frequencyHz[0]));
    }

    private void provenance(String name) throws IOException {
        switch (name) {
            case "procedureId" -> word(IndexField.MEASUREMENT, text());
            case "operator" -> word(IndexField.OPERATOR, text());
            case "instruments" -> instruments();
            case "specimen" -> object(this::specimen);
            default -> in.skipChildren();
        }
    }

    private void instruments() throws IOException {
        boolean[] overdue = {false};
        objects(
                name -> {
                    if (name.equals("overdue")) {
                        overdue[0] |= in.getBooleanValue();
                    } else {
                        in.skipChildren();
                    }
                },
                () -> {});
        value(IndexField.OVERDUE, overdue[0] ? 1 : 0);
    }

    private void specimen(String name) throws IOException {
        switch (name) {
            case "amplifier" -> row.word(IndexField.AMPLIFIER, text());
            case "serialNumber" -> row.word(IndexField.SERIAL, text());
            case "bench" -> row.word(IndexField.BENCH, text());
            default -> in.skipChildren();
        }
    }

    private void notes() throws IOException {
        require(JsonToken.START_ARRAY);
        List<String> notes = new ArrayList<>();
        while (in.nextToken() != JsonToken.END_ARRAY) {
            notes.add(text());
        }
        row.word(IndexField.TEXT, IndexRow.oneLine(String.join(" ", notes)));
    }
}
