// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.scpi;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.util.ArrayDeque;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Queue;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.DoubleUnaryOperator;

/**
 * A supply, a generator, an oscilloscope and a meter, each on a port of its own, and an ideal amplifier between them: its outputs are its
 * input times a gain for each channel, without limit. They know the headers of the shipped command sets and nothing else.
 */
final class SimulatedBench implements AutoCloseable {
    static final double FIRST_GAIN = 20;
    static final double SECOND_GAIN = -10;
    static final double LEAD_OHMS = 0.01;
    static final double SUPPLY_AMPS = 2.5;

    final InstrumentServer supply;
    final InstrumentServer generator;
    final InstrumentServer oscilloscope;
    final InstrumentServer meter;

    /** The header at which the link is dropped next, without heeding it; empty for none. */
    volatile String dropAt = "";

    /** The standard event status register of all of them. */
    volatile int events;

    private final Map<String, Map<String, String>> values = new ConcurrentHashMap<>();
    private final Map<String, Queue<String>> errors = new ConcurrentHashMap<>();

    SimulatedBench() throws IOException {
        supply = new InstrumentServer((line, reply) -> hear("supply", line, reply));
        generator = new InstrumentServer((line, reply) -> hear("generator", line, reply));
        oscilloscope = new InstrumentServer((line, reply) -> hear("oscilloscope", line, reply));
        meter = new InstrumentServer((line, reply) -> hear("meter", line, reply));
    }

    /** Returns settings that name the addresses of all four. */
    Map<String, String> settings() {
        Map<String, String> settings = new LinkedHashMap<>();
        settings.put("supply.address", supply.address().toString());
        settings.put("supply.settleSeconds", "0");
        settings.put("generator.address", generator.address().toString());
        settings.put("oscilloscope.address", oscilloscope.address().toString());
        settings.put("oscilloscope.commands", "oscilloscope-int16");
        settings.put("oscilloscope.channels", "1,2");
        settings.put("voltmeter.address", meter.address().toString());
        settings.put("caseThermometer.address", meter.address().toString());
        settings.put("link.answerSeconds", "10");
        return settings;
    }

    boolean supplyOn() {
        return value("supply", "OUTPut:STATe", "OFF").equals("ON");
    }

    boolean generatorOn() {
        return value("generator", "OUTPut:STATe", "OFF").equals("ON");
    }

    /** Returns what a header was last set to. */
    String value(String instrument, String header, String otherwise) {
        return values.getOrDefault(instrument, Map.of()).getOrDefault(header, otherwise);
    }

    private void hear(String instrument, String line, InstrumentServer.Reply reply) throws IOException {
        Map<String, String> own = values.computeIfAbsent(instrument, name -> new ConcurrentHashMap<>());
        Queue<String> queue = errors.computeIfAbsent(instrument, name -> new ArrayDeque<>());
        String[] words = line.split(" ", 2);
        if (words[0].equals(dropAt)) {
            dropAt = "";
            reply.hangUp();
            return;
        }
        switch (words[0]) {
            case "*ESR?" -> reply.line(Integer.toString(events));
            case "*IDN?" -> reply.line("Made-up Workshop," + instrument + ",0,1.0");
            case "*CLS" -> queue.clear();
            case "*RST" -> own.clear();
            case "*OPC?" -> reply.line("1");
            case "SYSTem:ERRor?" -> {
                String error = queue.poll();
                reply.line(error == null ? "0,\"No error\"" : error);
            }
            default -> {
                boolean known =
                        switch (instrument) {
                            case "supply" -> supply(words[0], own, reply);
                            case "meter" -> meter(words[0], reply);
                            case "oscilloscope" -> oscilloscope(words, own, reply);
                            default ->
                                List.of("SOURce", "OUTPut", "INITiate").stream().anyMatch(words[0]::startsWith);
                        };
                if (!known) {
                    queue.add("-113,\"Undefined header;" + words[0] + "\"");
                } else if (words.length > 1 && !words[0].endsWith("?")) {
                    set(own, queue, words[0], words[1]);
                }
            }
        }
    }

    private static void set(Map<String, String> own, Queue<String> queue, String header, String value) {
        if (header.equals("SOURce:FREQuency:FIXed") && Double.parseDouble(value) > 1e6) {
            queue.add("-222,\"Data out of range\"");
            return;
        }
        own.put(header, value);
    }

    private boolean supply(String header, Map<String, String> own, InstrumentServer.Reply reply) throws IOException {
        if (header.equals("MEASure:SCALar:CURRent:DC?")) {
            reply.line(supplyOn() ? "+2.500000E+00" : "0.0");
            return true;
        }
        if (header.equals("MEASure:SCALar:VOLTage:DC?")) {
            reply.line(supplyOn() ? own.get("SOURce:VOLTage:LEVel:IMMediate:AMPLitude") : "0");
            return true;
        }
        return header.startsWith("SOURce") || header.startsWith("OUTPut");
    }

    private boolean meter(String header, InstrumentServer.Reply reply) throws IOException {
        if (header.equals("MEASure:SCALar:VOLTage:DC?")) {
            double set = Double.parseDouble(value("supply", "SOURce:VOLTage:LEVel:IMMediate:AMPLitude", "0"));
            reply.line(Double.toString(supplyOn() ? set - SUPPLY_AMPS * LEAD_OHMS : 0));
            return true;
        }
        if (header.equals("MEASure:SCALar:TEMPerature?")) {
            reply.line("+4.15E+01");
            return true;
        }
        return false;
    }

    private boolean oscilloscope(String[] words, Map<String, String> own, InstrumentServer.Reply reply)
            throws IOException {
        String header = words[0];
        if (header.equals("TRACe:DATA?")) {
            trace(words[1], own, reply);
            return true;
        }
        if (header.endsWith("TINTerval?")) {
            reply.line(Double.toString(interval(own)));
            return true;
        }
        if (header.endsWith("?")) {
            String value = own.get(header.substring(0, header.length() - 1));
            if (value != null) {
                reply.line(value);
            }
            return value != null;
        }
        return List.of("SENSe", "FORMat", "TRIGger", "INITiate").stream().anyMatch(header::startsWith);
    }

    private void trace(String channel, Map<String, String> own, InstrumentServer.Reply reply) throws IOException {
        String range = "SENSe" + channel.substring(2) + ":VOLTage:DC:RANGe:";
        double rangeVolts = own.containsKey(range + "PTPeak")
                ? Double.parseDouble(own.get(range + "PTPeak")) / 2
                : Double.parseDouble(own.get(range + "UPPer"));
        double interval = interval(own);
        int points = Integer.parseInt(own.get("SENSe:SWEep:POINts"));
        DoubleUnaryOperator volts = volts(channel);
        if (own.get("FORMat:DATA").equals("ASCii")) {
            StringBuilder list = new StringBuilder();
            for (int i = 0; i < points; i++) {
                double now = Math.max(-rangeVolts, Math.min(rangeVolts, volts.applyAsDouble(i * interval)));
                list.append(i == 0 ? "" : ",").append(String.format(Locale.ROOT, "%+.6E", now));
            }
            reply.line(list.toString());
            return;
        }
        boolean integers = own.get("FORMat:DATA").startsWith("INT");
        ByteOrder order = own.get("FORMat:BORDer").equals("NORMal") ? ByteOrder.BIG_ENDIAN : ByteOrder.LITTLE_ENDIAN;
        ByteBuffer block = ByteBuffer.allocate(points * (integers ? 2 : 4)).order(order);
        for (int i = 0; i < points; i++) {
            double now = volts.applyAsDouble(i * interval);
            double clipped = Math.max(-rangeVolts, Math.min(rangeVolts, now));
            if (integers) {
                long count = Math.round(clipped / rangeVolts * 32768);
                block.putShort((short) Math.max(-32768, Math.min(32767, count)));
            } else {
                block.putFloat((float) clipped);
            }
        }
        reply.block(block.array());
    }

    private static double interval(Map<String, String> own) {
        return own.containsKey("SENSe:SWEep:TIME")
                ? Double.parseDouble(own.get("SENSe:SWEep:TIME")) / Double.parseDouble(own.get("SENSe:SWEep:POINts"))
                : Double.parseDouble(own.get("SENSe:SWEep:TINTerval"));
    }

    /** Returns the volts of a channel over the time in seconds. */
    private DoubleUnaryOperator volts(String channel) {
        double gain =
                switch (channel) {
                    case "CH1" -> FIRST_GAIN;
                    case "CH2" -> SECOND_GAIN;
                    default -> 1;
                };
        String prefix = value("generator", "SOURce1:FREQuency:FIXed", "").isEmpty() ? "SOURce:" : "SOURce1:";
        String output = prefix.equals("SOURce:") ? "OUTPut:STATe" : "OUTPut1:STATe";
        if (!value("generator", output, "OFF").equals("ON")) {
            return seconds -> 0;
        }
        double radiansPerSecond = 2 * Math.PI * Double.parseDouble(value("generator", prefix + "FREQuency:FIXed", "0"));
        double peak = gain * Double.parseDouble(value("generator", prefix + "VOLTage:LEVel:IMMediate:AMPLitude", "0"));
        if (!value("generator", prefix + "VOLTage:MODE", "FIXed").equals("LIST")) {
            return seconds -> peak * Math.sin(radiansPerSecond * seconds);
        }
        double[] levels = numbers(value("generator", prefix + "LIST:VOLTage", ""));
        double[] times = numbers(value("generator", prefix + "LIST:DWELl", ""));
        return seconds -> gain
                * (seconds % (times[0] + times[1]) < times[0] - 1e-9 ? levels[0] : levels[1])
                * Math.sin(radiansPerSecond * seconds);
    }

    private static double[] numbers(String list) {
        return List.of(list.split(",")).stream()
                .mapToDouble(Double::parseDouble)
                .toArray();
    }

    /** Returns settings with others in place of some. */
    static Map<String, String> with(Map<String, String> settings, String... changes) {
        Map<String, String> all = new HashMap<>(settings);
        for (int i = 0; i < changes.length; i += 2) {
            all.put(changes[i], changes[i + 1]);
        }
        return all;
    }

    @Override
    public void close() throws IOException {
        supply.close();
        generator.close();
        oscilloscope.close();
        meter.close();
    }
}
