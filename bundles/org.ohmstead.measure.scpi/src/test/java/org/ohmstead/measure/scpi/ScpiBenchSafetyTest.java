// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.scpi;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTimeoutPreemptively;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.ohmstead.measure.scpi.BenchFixture.open;
import static org.ohmstead.measure.scpi.BenchFixture.refusal;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.Map;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicReference;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.ohmstead.measure.Bench;
import org.ohmstead.measure.Feed;
import org.ohmstead.measure.MeasurementException;

class ScpiBenchSafetyTest {
    @Test
    void switchesTheSupplyOffWhenTheTerminalsDisagree() throws Exception {
        try (SimulatedBench simulated = new SimulatedBench();
                Bench bench = open(SimulatedBench.with(simulated.settings(), "supply.agreementVolts", "0.02"))) {
            // The leads take 25 mV.
            String message = refusal(() -> bench.setSupplyVolts(12));
            assertTrue(message.contains("11.975 V were read"), message);
            assertFalse(simulated.supplyOn());
        }
    }

    @Test
    void standingDownSwitchesOffAndFeedsNothingUntilTheSupplyIsSetAnew() throws Exception {
        try (SimulatedBench simulated = new SimulatedBench();
                Bench bench = open(simulated.settings())) {
            bench.setSupplyVolts(12);
            bench.feed(Feed.Tone.of(1000, -20));
            Thread.currentThread().interrupt();
            bench.standDown();
            assertTrue(Thread.interrupted());
            assertFalse(simulated.supplyOn());
            assertFalse(simulated.generatorOn());
            assertTrue(refusal(() -> bench.feed(Feed.Tone.of(1000, -20))).contains("made safe"));
            bench.feed(new Feed.Silence());
            assertFalse(simulated.generatorOn());
            assertEquals(0, bench.observe().supplyVolts().orElseThrow(), 0);
            bench.setSupplyVolts(12);
            bench.feed(Feed.Tone.of(1000, -20));
            assertTrue(simulated.supplyOn() && simulated.generatorOn());
        }
    }

    @Test
    void closingMakesSafeAndASecondTimeDoesNothing() throws Exception {
        try (SimulatedBench simulated = new SimulatedBench()) {
            Bench bench = open(simulated.settings());
            bench.setSupplyVolts(12);
            bench.feed(Feed.Tone.of(1000, -20));
            bench.close();
            assertFalse(simulated.supplyOn() || simulated.generatorOn());
            int heard = simulated.supply.heard().size();
            bench.close();
            bench.standDown();
            assertEquals(heard, simulated.supply.heard().size());
            assertTrue(refusal(() -> bench.setSupplyVolts(12)).contains("was closed"));
            assertTrue(refusal(bench::observe).contains("was closed"));
        }
    }

    /** A supply that takes its time with one query, until it is let go. */
    private static final class StubbornSupply implements InstrumentServer.Behaviour {
        final CountDownLatch asked = new CountDownLatch(1);
        final CountDownLatch letGo = new CountDownLatch(1);
        volatile String stubbornAt = "MEASure:SCALar:CURRent:DC?";
        volatile boolean on;

        @Override
        public void hear(String line, InstrumentServer.Reply reply) throws IOException, InterruptedException {
            if (line.equals(stubbornAt)) {
                asked.countDown();
                letGo.await(20, TimeUnit.SECONDS);
            }
            switch (line) {
                case "*IDN?" -> reply.line("Made-up Workshop,S,0,1");
                case "*OPC?" -> reply.line("1");
                case "SYSTem:ERRor?" -> reply.line("0,\"No error\"");
                case "OUTPut:STATe ON" -> on = true;
                case "OUTPut:STATe OFF" -> on = false;
                case "MEASure:SCALar:CURRent:DC?" -> reply.line("2.5");
                default -> {
                    // Something to set.
                }
            }
        }
    }

    private static Thread observing(Bench bench, AtomicReference<Object> end) {
        Thread waiting = new Thread(() -> {
            try {
                end.set(bench.observe().supplyAmps().orElseThrow());
            } catch (MeasurementException | InterruptedException ended) {
                end.set(ended);
            }
        });
        waiting.start();
        return waiting;
    }

    private static Map<String, String> supplyOnly(InstrumentServer server) {
        return Map.of(
                "supply.address", server.address().toString(),
                "supply.settleSeconds", "0",
                "link.answerSeconds", "15");
    }

    @Test
    void standsDownAtOnceWhileAnotherThreadWaitsForAnAnswer() throws Exception {
        StubbornSupply supply = new StubbornSupply();
        AtomicReference<Object> end = new AtomicReference<>();
        try (InstrumentServer server = new InstrumentServer(supply);
                Bench bench = open(supplyOnly(server))) {
            bench.setSupplyVolts(12);
            assertTrue(supply.on);
            Thread waiting = observing(bench, end);
            assertTrue(supply.asked.await(5, TimeUnit.SECONDS));
            // The instrument is busy on that link, so it is switched off on another.
            assertTimeoutPreemptively(Duration.ofSeconds(8), bench::standDown);
            assertFalse(supply.on);
            assertTrue(waiting.isAlive());
            supply.letGo.countDown();
            waiting.join(5000);
            assertEquals(2.5, end.get());
            assertFalse(supply.on);
        }
    }

    @Test
    void tellsAnInstrumentWithASingleLinkAndSaysThatItDidNotConfirm() throws Exception {
        StubbornSupply supply = new StubbornSupply();
        AtomicReference<Object> end = new AtomicReference<>();
        try (InstrumentServer server = new InstrumentServer(supply, true);
                Bench bench = open(supplyOnly(server))) {
            bench.setSupplyVolts(12);
            Thread waiting = observing(bench, end);
            assertTrue(supply.asked.await(5, TimeUnit.SECONDS));
            String message = assertTimeoutPreemptively(Duration.ofSeconds(8), () -> refusal(bench::standDown));
            assertTrue(message.startsWith("The supply was told to switch off, but did not confirm it"), message);
            assertTrue(message.endsWith("Switch it off by hand."), message);
            assertTrue(supply.on);
            supply.letGo.countDown();
            waiting.join(5000);
            assertEquals(2.5, end.get());
            // Its next line is the one that was put in between.
            bench.observe();
            assertFalse(supply.on);
        }
    }

    @Test
    void makesTheOthersSafeWhenOneIsGoneAndNamesIt() throws Exception {
        try (SimulatedBench simulated = new SimulatedBench()) {
            Bench bench = open(simulated.settings());
            bench.setSupplyVolts(12);
            bench.feed(Feed.Tone.of(1000, -20));
            simulated.generator.close();
            String message = refusal(bench::standDown);
            assertTrue(message.contains("The generator") && message.contains("by hand"), message);
            assertFalse(message.contains("The supply"), message);
            assertFalse(simulated.supplyOn());
            assertThrows(MeasurementException.class, bench::close);
            bench.close();
        }
    }

    @Test
    void letsAllGoWhenOneDoesNotOpen() throws Exception {
        try (SimulatedBench simulated = new SimulatedBench();
                InstrumentServer silent = new InstrumentServer((line, reply) -> {})) {
            Map<String, String> settings = SimulatedBench.with(
                    simulated.settings(),
                    "oscilloscope.address",
                    silent.address().toString(),
                    "link.answerSeconds",
                    "0.2");
            MeasurementException refused = assertThrows(MeasurementException.class, () -> open(settings));
            assertTrue(refused.getMessage().contains(silent.address().toString()), refused.getMessage());
            assertTrue(refused.getMessage().contains("sent nothing within 0.2 s"), refused.getMessage());
            assertFalse(simulated.supplyOn() || simulated.generatorOn());
            // The instruments that had been reached were told to be off.
            assertTrue(simulated.supply.heard().contains("OUTPut:STATe OFF"));
        }
    }

    @Test
    void refusesAnInstrumentThatIsNotTheOneOfItsCommandSet(@TempDir Path folder) throws Exception {
        try (SimulatedBench simulated = new SimulatedBench()) {
            String set;
            try (InputStream shipped = CommandSets.class.getResourceAsStream("supply.commands")) {
                set = new String(shipped.readAllBytes(), StandardCharsets.UTF_8);
            }
            Files.writeString(
                    folder.resolve("mine.commands"),
                    set.replace("role = supply", "role = supply\nidentity = ,supply,"));
            Map<String, String> right = SimulatedBench.with(
                    simulated.settings(), "commands.folder", folder.toString(), "supply.commands", "mine");
            open(right).close();
            Map<String, String> wrong = SimulatedBench.with(
                    right, "supply.address", simulated.meter.address().toString());
            String message = refusal(() -> open(wrong));
            assertTrue(message.contains("Workshop,meter,0") && message.contains("Check the address"), message);
        }
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "supply.commands=generator|is for a generator, not for a supply",
                "supply.commands=none|There is no command set",
                "supply.address=a b|is no address",
                "generator.outputs=1,2|knows one output only",
                "generator.outputs=1,,2|is no list of channels",
                "oscilloscope.channels=1,1|each once",
                "oscilloscope.inputChannel=2|one that is not at the output",
                "oscilloscope.ranges=1,1|rising",
                "oscilloscope.ranges=1,x|rising",
                "commands.folder=/no/such/folder|cannot be read",
                "caseThermometer.commands=multimeter-read|has no [measure temperature]",
                "voltmeter.channel=1;*RST|is no number of a channel"
            })
    void saysWhatIsWrongWithASetting(String given) throws Exception {
        String[] cut = given.split("[=|]", 3);
        try (SimulatedBench simulated = new SimulatedBench()) {
            String message = refusal(() -> open(SimulatedBench.with(simulated.settings(), cut[0], cut[1])));
            assertTrue(message.contains(cut[2]), message);
        }
        assertTrue(refusal(() -> open(Map.of())).contains("No instrument of the bench has an address"));
    }

    @Test
    void aCommandToSwitchOffThatWasLostWithItsLinkIsSentAgain() throws Exception {
        try (SimulatedBench simulated = new SimulatedBench();
                Bench bench = open(simulated.settings())) {
            for (int i = 0; i < 5; i++) {
                bench.setSupplyVolts(12);
                assertTrue(simulated.supplyOn());
                simulated.dropAt = "OUTPut:STATe";
                bench.standDown();
                assertEquals("", simulated.dropAt);
                assertFalse(simulated.supplyOn());
            }
        }
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "SOURce:CURRent:LEVel:IMMediate:AMPLitude",
                "SOURce:VOLTage:LEVel:IMMediate:AMPLitude",
                "SYSTem:ERRor?"
            })
    void givesNoPowerWhenASettingWasLostWithItsLink(String header) throws Exception {
        try (SimulatedBench simulated = new SimulatedBench();
                Bench bench = open(simulated.settings())) {
            simulated.dropAt = header;
            assertTrue(refusal(() -> bench.setSupplyVolts(12)).contains("dropped the link"));
            assertFalse(simulated.supplyOn());
            bench.setSupplyVolts(12);
            assertTrue(simulated.supplyOn());
        }
    }

    @Test
    void takesNoRecordForANewOneWhenTheCommandToRecordWasLost() throws Exception {
        try (SimulatedBench simulated = new SimulatedBench();
                Bench bench = open(simulated.settings())) {
            simulated.dropAt = "INITiate:IMMediate";
            assertTrue(refusal(() -> bench.acquire(0.01)).contains("dropped the link"));
            assertEquals(2, bench.acquire(0.01).output().channels().size());
            // To fetch once more does no harm.
            simulated.dropAt = "TRACe:DATA?";
            assertEquals(2, bench.acquire(0.01).output().channels().size());
            assertEquals("", simulated.dropAt);
        }
    }

    @Test
    void noticesThatAnInstrumentWasSwitchedOffAndOn() throws Exception {
        try (SimulatedBench simulated = new SimulatedBench();
                Bench bench = open(simulated.settings())) {
            simulated.dropAt = "MEASure:SCALar:TEMPerature?";
            assertEquals(41.5, bench.observe().caseCelsius().orElseThrow(), 0);
            assertEquals(41.5, bench.observe().caseCelsius().orElseThrow(), 0);
            assertEquals(2, simulated.meter.links());
            // IEEE 488.2, 11.5.1.1: bit 7 of the event status register is power on.
            simulated.events = 128;
            simulated.dropAt = "MEASure:SCALar:TEMPerature?";
            bench.observe();
            assertTrue(refusal(bench::observe).contains("switched off and on"));
            simulated.events = 0;
            assertTrue(refusal(bench::observe).contains("switched off and on"));
        }
    }

    @Test
    void nothingIsSwitchedOnByACallThatWasUnderWayWhenTheBenchWasMadeSafe() throws Exception {
        StubbornSupply supply = new StubbornSupply();
        AtomicReference<Object> end = new AtomicReference<>();
        try (InstrumentServer server = new InstrumentServer(supply);
                Bench bench = open(supplyOnly(server))) {
            supply.stubbornAt = "SYSTem:ERRor?";
            Thread setting = new Thread(() -> {
                try {
                    bench.setSupplyVolts(12);
                } catch (MeasurementException | InterruptedException ended) {
                    end.set(ended.getMessage());
                }
            });
            setting.start();
            assertTrue(supply.asked.await(5, TimeUnit.SECONDS));
            bench.standDown();
            supply.letGo.countDown();
            setting.join(10_000);
            assertTrue(String.valueOf(end.get()).contains("The bench was made safe before"), String.valueOf(end.get()));
            assertFalse(supply.on);
            assertFalse(server.heard().contains("OUTPut:STATe ON"));
        }
    }

    @Test
    void aLevelThatWasLostWithItsLinkIsNotTakenForSet() throws Exception {
        try (SimulatedBench simulated = new SimulatedBench();
                Bench bench = open(simulated.settings())) {
            bench.setSupplyVolts(12);
            bench.feed(Feed.Tone.of(1000, -3));
            simulated.dropAt = "SOURce:VOLTage:LEVel:IMMediate:AMPLitude";
            String message = refusal(() -> bench.feed(Feed.Tone.of(1000, -40)));
            assertTrue(message.contains("dropped the link"), message);
        }
    }
}
