// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.report.internal;

import java.util.Optional;
import org.ohmstead.report.LogStamp;
import org.ohmstead.report.ResultsSheet;

/** Puts the teaching handout together. */
final class HandoutBuilder {
    private static final int FACT_CHARACTERS = 120;

    private final ResultsSheet sheet;
    private final Speech speech;
    private final ChartBook book;

    HandoutBuilder(ResultsSheet sheet, Speech speech, ChartBook book) {
        this.sheet = sheet;
        this.speech = speech;
        this.book = book;
    }

    HandoutView build() {
        Evidence evidence = new Evidence(sheet, speech);
        Optional<Example> example = Example.in(evidence);
        HandoutSteps steps = new HandoutSteps(speech, sheet);
        example.ifPresent(found -> steps.explain(found, new LevelCharts(evidence, book)));
        return new HandoutView(
                new Facts(sheet, speech).brief(FACT_CHARACTERS),
                example.map(steps::given).orElse(""),
                steps.predictions(),
                steps.steps(),
                speech.percent(evidence.confidence(), 4),
                log());
    }

    private String log() {
        LogStamp log = sheet.log();
        return log.headHash().isEmpty()
                ? speech.text("log.empty")
                : speech.text(
                        log.verified() ? "log.intact" : "log.unchecked",
                        log.headHash(),
                        Long.toString(log.entryCount()));
    }
}
