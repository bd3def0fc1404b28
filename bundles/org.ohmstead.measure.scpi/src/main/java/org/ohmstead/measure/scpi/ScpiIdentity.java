// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.scpi;

/**
 * What an instrument says it is: the four fields of the answer to *IDN? (IEEE 488.2, 10.14).
 *
 * @param maker who made it
 * @param model what it is
 * @param serialNumber of the specimen; "0" when it has none
 * @param firmware version of what runs in it; "0" when it has none
 */
public record ScpiIdentity(String maker, String model, String serialNumber, String firmware) {
    public ScpiIdentity {
        Checks.present(maker, "maker");
        Checks.present(model, "model");
        Checks.present(serialNumber, "serialNumber");
        Checks.present(firmware, "firmware");
    }
}
