/** The record of a job, for the customer: what was injected, where, what was expected, what was displayed, what it proves. */
package understudy.report;
