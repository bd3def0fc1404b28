// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog.shared;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.ohmstead.testlog.VerifyFault;
import org.ohmstead.testlog.VerifyReport;
import org.ohmstead.testlog.chain.ChainCheck;
import org.ohmstead.testlog.chain.ChainedRow;
import org.ohmstead.testlog.shared.internal.LabGuards;
import org.ohmstead.units.text.Messages;

/**
 * One check of the whole shared log: what protects its tables, and every entry of every chain. A chain that parts from another one is
 * checked as its continuation. Nothing of it trusts the server's own checks: whoever rules the server could have switched them off.
 */
final class LabVerification {
    private static final Messages TEXTS = Messages.of(LabVerification.class);
    private static final int PAGE = 1000;

    private final SharedLab lab;
    private final Set<String> missingHeads;
    private final Map<String, List<LabChain>> byParent = new HashMap<>();
    private final Map<String, ChainCheck> begun = new HashMap<>();
    private final Map<String, VerifyReport> reports = new HashMap<>();

    LabVerification(SharedLab lab, List<String> expectedHeads) {
        this.lab = lab;
        this.missingHeads = new HashSet<>(expectedHeads);
        missingHeads.remove(ChainedRow.FIRST_PREVIOUS_HASH);
    }

    LabVerifyReport run() throws SharedLabException {
        List<VerifyFault> whole = new ArrayList<>(lab.look(TEXTS.text("failed.guards"), LabGuards::faults));
        List<LabChain> chains = lab.chains();
        Map<String, LabChain> left = new LinkedHashMap<>();
        for (LabChain chain : chains) {
            left.put(chain.info().chain(), chain);
            byParent.computeIfAbsent(chain.parentHash(), none -> new ArrayList<>())
                    .add(chain);
        }
        for (LabChain chain : byParent.getOrDefault(ChainedRow.FIRST_PREVIOUS_HASH, List.of())) {
            begun.put(chain.info().chain(), new ChainCheck(chain.info().label()));
        }
        while (!left.isEmpty()) {
            // One whose beginning was seen, or else one whose beginning is nowhere.
            LabChain next = left.values().stream()
                    .filter(chain -> begun.containsKey(chain.info().chain()))
                    .findFirst()
                    .orElseGet(() -> left.values().iterator().next());
            left.remove(next.info().chain());
            reports.put(next.info().chain(), check(next));
        }
        missingHeads.stream()
                .sorted()
                .forEach(head -> whole.add(fault(VerifyFault.Kind.HEAD_NOT_FOUND, TEXTS.text("verify.head", head))));
        return new LabVerifyReport(
                whole,
                chains.stream()
                        .map(chain -> new LabVerifyReport.Part(
                                chain, reports.get(chain.info().chain())))
                        .toList());
    }

    private VerifyReport check(LabChain chain) throws SharedLabException {
        List<VerifyFault> faults = new ArrayList<>();
        String label = chain.info().label();
        String bench = chain.origin().bench();
        ChainCheck check = begun.remove(chain.info().chain());
        if (check == null) {
            faults.add(fault(VerifyFault.Kind.CHAIN_BROKEN, TEXTS.text("verify.nowhere", label, bench)));
            check = new ChainCheck(chain.info().label());
        }
        long rows = 0;
        long after = 0;
        for (List<ChainedRow> page = lab.rows(chain.info().chain(), after, PAGE);
                !page.isEmpty();
                page = lab.rows(chain.info().chain(), after, PAGE)) {
            if (rows == 0 && !page.get(0).hash().equals(chain.info().chain())) {
                faults.add(fault(VerifyFault.Kind.CHAIN_BROKEN, TEXTS.text("verify.begins", label, bench)));
            }
            for (ChainedRow row : page) {
                checkRow(check, row);
            }
            rows += page.size();
            after = page.get(page.size() - 1).sequence();
        }
        if (rows == 0) {
            faults.add(fault(VerifyFault.Kind.ENTRY_MISSING, TEXTS.text("verify.empty", label, bench)));
        }
        faults.addAll(check.faults());
        return new VerifyReport(rows, check.headHash(), faults, check.clockStepCount(), check.clockSteps());
    }

    private void checkRow(ChainCheck check, ChainedRow row) {
        check.check(row);
        missingHeads.remove(row.hash());
        for (LabChain parting : byParent.getOrDefault(row.hash(), List.of())) {
            begun.put(parting.info().chain(), check.parting(parting.info().label()));
        }
    }

    private static VerifyFault fault(VerifyFault.Kind kind, String sentence) {
        return new VerifyFault(kind, 0, "", sentence);
    }
}
