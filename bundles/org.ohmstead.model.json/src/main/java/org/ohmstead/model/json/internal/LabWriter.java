// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.model.json.internal;

import com.fasterxml.jackson.databind.node.ObjectNode;
import org.ohmstead.model.CheckStandard;
import org.ohmstead.model.SharedLog;
import org.ohmstead.model.SheetLayout;

/** Writes what a project holds of the laboratory around it. */
final class LabWriter {
    private LabWriter() {}

    static ObjectNode checkStandard(CheckStandard standard) {
        return ObjectBuilder.begin()
                .text("id", standard.id())
                .text("name", standard.name())
                .text("stepId", standard.stepId())
                .text("figureId", standard.figureId())
                .text("channel", standard.channel())
                .text("unit", standard.unit())
                .whole("baselineCount", standard.baselineCount())
                .number("significanceRatio", standard.significanceRatio())
                .number("referenceValue", standard.referenceValue())
                .number("referenceStandardUncertainty", standard.referenceStandardUncertainty())
                .whole("everyDays", standard.everyDays())
                .end();
    }

    static ObjectNode sharedLog(SharedLog shared) {
        return ObjectBuilder.begin()
                .text("host", shared.host())
                .whole("port", shared.port())
                .text("database", shared.database())
                .text("bench", shared.bench())
                .text("certificateFile", shared.certificateFile())
                .end();
    }

    static ObjectNode layout(SheetLayout layout) {
        return ObjectBuilder.begin()
                .choice("design", layout.design())
                .choice("paper", layout.paper())
                .text("address", layout.address())
                .text("contact", layout.contact())
                .text("accreditation", layout.accreditation())
                .text("logoFile", layout.logoFile())
                .texts("comparedProjects", layout.comparedProjects())
                .texts("comparedPeriods", layout.comparedPeriods())
                .end();
    }
}
